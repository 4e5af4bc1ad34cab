using StormClock.Core.Reminders;

namespace StormClock.Service.Messages;

/// <summary>
/// The cautions in words. Figures from trade.md 1.5 (and 4.1 for lifting) with their marks there: wires, trees near
/// wires, lightning, generator, tetanus and ladder are read or restated by public bodies; water and heat M; alone and
/// lifting C.
/// </summary>
public static class CautionWords
{
    public static string Of(Caution caution) => caution switch
    {
        Caution.OfficialOrders =>
            "Official orders come before everything here. If you are told to leave or to shelter, do that and let the garden be.",
        Caution.Ladder =>
            "Ladder: one out for every four up, 0.9 m (3 ft) above a landing, three points of contact, somebody at its foot. Never in wind, rain or dark.",
        Caution.Lifting =>
            "Lifting: empty it, roll it or slide it before you carry it. Above 23 kg (50 lb) take a second person or a hand truck; leave what is over 100 kg (220 lb) where it stands and tie it.",
        Caution.Wires =>
            "Wires: keep 10 m (35 ft) away from a fallen one and from all that it touches. Cut nothing within 3 m (10 ft) of a line, carry ladders level. The rest is for the utility or a licensed electrician.",
        Caution.Water =>
            "Water: 15 cm (6 in) of it moving can take your feet away. Treat floodwater as sewage, and as live.",
        Caution.Heat =>
            "Heat: in great heat rest 15 min in every hour, and drink about 240 mL (8 oz) every 15 to 20 min.",
        Caution.Saw =>
            "Saw: two people, nothing above the shoulder, nothing sprung or hung, never on a ladder; everybody else two tree lengths away. Ears, eyes and legs covered.",
        Caution.Generator =>
            "Engines: a generator or pressure washer runs outside, 6 m (20 ft) from doors, windows and vents, its exhaust pointing away. Let it cool 15 to 20 min before you refuel.",
        Caution.Alone =>
            "Alone: tell somebody when you start and when you will be in, and keep the phone on you.",
        Caution.Lightning =>
            "Lightning: go in when you hear thunder, and stay in until 30 min after the last of it. New thunder starts the 30 min again.",
        Caution.Sharp =>
            "Sharp: glass, sheet edges and nails want gloves, stout shoes and covered eyes.",
        Caution.Tetanus =>
            "Tetanus: a booster lasts 10 years. After a deep or puncture wound ask for one if the last is 5 years old or more.",
        Caution.Trees =>
            "Trees: one that leans, cracks or holds a broken branch can come down at any moment. Keep out from under it; it is work for a licensed arborist.",
        Caution.Lull =>
            "Lull: it may be the eye, and wind can be back from the other side within minutes. Stay in until the recheck message.",
        _ => throw new ArgumentOutOfRangeException(nameof(caution), caution, null),
    };
}
