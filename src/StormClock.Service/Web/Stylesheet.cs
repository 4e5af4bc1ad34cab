using System.Globalization;
using Microsoft.AspNetCore.Http.HttpResults;
using StormClock.Service.Plots;

namespace StormClock.Service.Web;

/// <summary>The one style sheet, part of the program so that no file can be missing beside it.</summary>
internal static class Stylesheet
{
    public const string Name = "storm.css";

    private static readonly string Css = string.Create(CultureInfo.InvariantCulture,
        $$"""
        :root { color-scheme: light; --ink: #16231d; --leaf: #0b4a31; --paper: #ffffff; --stop: #7a1408; --line: #5d6b64; }
        * { box-sizing: border-box; }
        body { margin: 0; background: var(--paper); color: var(--ink); font: 1.125rem/1.5 system-ui, sans-serif; overflow-wrap: anywhere; }
        header, main, footer { max-width: 40rem; margin: 0 auto; padding: 0.75rem; }
        header { border-bottom: 4px solid var(--leaf); font-weight: bold; }
        footer { border-top: 1px solid var(--line); margin-top: 2rem; }
        h1 { margin: 0.75rem 0; font-size: 1.5rem; line-height: 1.25; }
        h2 { margin: 2rem 0 0.5rem; padding-top: 0.5rem; border-top: 3px solid var(--leaf); color: var(--leaf); font-size: 1.25rem; }
        h3 { margin: 1rem 0 0.25rem; font-size: 1.125rem; }
        p { margin: 0 0 0.75rem; }
        ul, ol { margin: 0 0 0.75rem; padding-left: 1.25rem; }
        li { margin-bottom: 0.75rem; }
        a { color: var(--leaf); }
        pre { white-space: pre-wrap; font: inherit; border-left: 3px solid var(--line); padding-left: 0.75rem; }
        summary { min-height: 3rem; padding: 0.5rem 0; cursor: pointer; }
        .stop { margin: 0.75rem 0 1.25rem; padding: 0.75rem; background: var(--stop); color: #ffffff; }
        .stop p:last-child, .said p:last-child { margin-bottom: 0; }
        .stop strong { font-size: 1.25rem; }
        .said { margin: 0.75rem 0; padding: 0.75rem; border: 3px solid var(--leaf); }
        .lead { font-size: 1.25rem; font-weight: bold; }
        .answers { display: flex; flex-direction: column; gap: 0.75rem; margin: 1rem 0; }
        button, .mark { display: block; width: 100%; min-height: 3.5rem; padding: 0.75rem; border: 3px solid var(--leaf); border-radius: 4px;
          background: var(--paper); color: var(--leaf); font: inherit; font-weight: bold; text-align: left; cursor: pointer; }
        .mark { min-height: 3rem; margin-top: 0.5rem; padding: 0.5rem 0.75rem; }
        input { width: 100%; min-height: 3rem; padding: 0.5rem 0.75rem; border: 3px solid var(--line); border-radius: 4px; font: inherit; }
        button.first { background: var(--leaf); color: #ffffff; }
        .timeline { margin: 0.75rem 0; }
        .timeline svg { display: block; max-width: 100%; height: auto; }
        .timeline.wide { display: none; }
        @media (min-width: 60rem) {
          .timeline.wide { display: block; width: 900px; margin-left: calc(50% - 450px); }
          .timeline.narrow { display: none; }
        }
        .skip { position: absolute; left: -100rem; min-height: 3rem; padding: 0.75rem; }
        h2 a { display: inline-block; min-height: 3rem; padding: 0.5rem 0; }
        .plot { overflow-x: auto; margin: 0.75rem 0; }
        .plot.wide { display: none; }
        .plot svg { display: block; max-width: 100%; height: auto; }
        .laid { position: relative; width: fit-content; }
        .laid img { position: absolute; left: {{PlotScale.LeftPx}}px; top: {{PlotScale.TopPx}}px; object-fit: cover; object-position: 0 0; opacity: 0.35; }
        .laid input { position: relative; display: block; }
        .plot input[type=image] { width: auto; min-height: 0; padding: 0; border: 0; border-radius: 0; cursor: crosshair; }
        @media (min-width: 60rem) {
          .plot.wide { display: block; width: 900px; margin-left: calc(50% - 450px); }
          .plot.narrow { display: none; }
        }
        .signs, .photos { padding: 0; list-style: none; }
        .signs li { display: flex; align-items: center; gap: 0.5rem; margin-bottom: 0.25rem; }
        .sign { flex: none; }
        .thing { display: flex; flex-wrap: wrap; align-items: center; gap: 0 0.75rem; }
        .heard { position: absolute; left: -100rem; }
        main .ways { padding: 0; }
        .photos { display: flex; flex-wrap: wrap; gap: 0.75rem; }
        .photos img { display: block; max-width: 100%; height: auto; }
        fieldset { margin: 1rem 0 0.75rem; padding: 0; border: 0; min-width: 0; }
        .fields { display: grid; grid-template-columns: repeat(auto-fit, minmax(8rem, 1fr)); gap: 0 0.75rem; }
        .fields > div { display: flex; flex-direction: column; justify-content: flex-end; }
        .days { display: flex; flex-wrap: wrap; gap: 0 0.75rem; }
        .days label { display: flex; align-items: center; gap: 0.5rem; min-height: 3rem; margin: 0; font-weight: normal; }
        .days input { width: 1.5rem; min-height: 1.5rem; height: 1.5rem; }
        .skip:focus { position: static; display: block; padding: 0.75rem; }
        nav, .ways { max-width: 40rem; margin: 0 auto; padding: 0 0.75rem; }
        nav .ways { padding: 0; }
        .ways { display: flex; flex-wrap: wrap; gap: 0 1.25rem; list-style: none; }
        .ways li { margin: 0; }
        .ways a { display: inline-block; min-height: 3rem; padding: 0.75rem 0; }
        .ways a[aria-current] { color: var(--ink); font-weight: bold; text-decoration-thickness: 4px; }
        .jobs > li { padding-bottom: 0.75rem; border-bottom: 1px solid var(--line); }
        .press { display: flex; flex-wrap: wrap; gap: 0.5rem; margin: 0.5rem 0; }
        .press > * { flex: 1 1 8rem; }
        .press button, .press summary { min-height: 3rem; padding: 0.5rem 0.75rem; }
        .press summary { border: 3px solid var(--leaf); border-radius: 4px; color: var(--leaf); font-weight: bold; list-style-position: inside; }
        .press details[open] { flex-basis: 100%; }
        .more { display: inline-block; min-height: 3rem; padding: 0.75rem 0; }
        .wide { overflow-x: auto; }
        textarea, select { width: 100%; min-height: 3rem; padding: 0.5rem 0.75rem; border: 3px solid var(--line); border-radius: 4px; background: var(--paper); font: inherit; }
        table { width: 100%; border-collapse: collapse; margin: 0 0 0.75rem; }
        th, td { padding: 0.375rem 0.5rem 0.375rem 0; border-bottom: 1px solid var(--line); text-align: left; vertical-align: top; }
        label, legend { display: block; margin: 0.75rem 0 0.25rem; font-weight: bold; }
        form > button { margin-top: 0.75rem; }
        :focus-visible { outline: 4px solid #b35900; outline-offset: 2px; }
        @media print {
          nav, form button, .press, .noprint, .skip, footer { display: none; }
          body { font-size: 11pt; }
        }

        """);

    public static ContentHttpResult Serve(HttpResponse response)
    {
        response.Headers.CacheControl = "max-age=3600";
        return TypedResults.Text(Css, "text/css; charset=utf-8");
    }
}
