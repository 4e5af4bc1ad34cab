using System.Reflection;
using System.Reflection.Emit;

namespace StormClock.Core.Tests;

/// <summary>Every type that a type mentions: bases, members, locals and the instructions of its methods.</summary>
internal static class IlReferences
{
    private const BindingFlags All =
        BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.Instance | BindingFlags.DeclaredOnly;

    private static readonly Dictionary<short, OpCode> OpCodesByValue = typeof(OpCodes)
        .GetFields(BindingFlags.Public | BindingFlags.Static)
        .Select(field => (OpCode)field.GetValue(null)!)
        .ToDictionary(code => code.Value);

    public static IEnumerable<Type> Of(Type type)
    {
        var seen = new HashSet<Type>();
        if (type.BaseType is { } parent) seen.Add(parent);
        seen.UnionWith(type.GetInterfaces());
        seen.UnionWith(type.GetFields(All).Select(field => field.FieldType));
        foreach (var method in type.GetMethods(All).Cast<MethodBase>().Concat(type.GetConstructors(All)))
        {
            seen.UnionWith(method.GetParameters().Select(parameter => parameter.ParameterType));
            if (method is MethodInfo info) seen.Add(info.ReturnType);
            if (method.GetMethodBody() is not { } body) continue;
            seen.UnionWith(body.LocalVariables.Select(local => local.LocalType));
            seen.UnionWith(InBody(method, body.GetILAsByteArray()!));
        }

        return seen.SelectMany(Parts).Distinct();
    }

    private static IEnumerable<Type> Parts(Type type)
    {
        if (type.HasElementType) return Parts(type.GetElementType()!);
        return type.IsGenericType ? type.GetGenericArguments().SelectMany(Parts).Prepend(type.GetGenericTypeDefinition()) : [type];
    }

    private static IEnumerable<Type> InBody(MethodBase method, byte[] il)
    {
        for (var at = 0; at < il.Length;)
        {
            short value = il[at++];
            if (value == 0xFE) value = (short)(0xFE00 | il[at++]);
            var code = OpCodesByValue[value];
            if (code.OperandType is OperandType.InlineField or OperandType.InlineMethod or OperandType.InlineTok or OperandType.InlineType)
            {
                foreach (var type in Resolve(method, BitConverter.ToInt32(il, at))) yield return type;
            }

            at += code.OperandType switch
            {
                OperandType.InlineNone => 0,
                OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar => 1,
                OperandType.InlineVar => 2,
                OperandType.InlineI8 or OperandType.InlineR => 8,
                OperandType.InlineSwitch => 4 + (4 * BitConverter.ToInt32(il, at)),
                _ => 4,
            };
        }
    }

    private static IEnumerable<Type> Resolve(MethodBase method, int token)
    {
        var typeArguments = method.DeclaringType!.IsGenericType ? method.DeclaringType.GetGenericArguments() : null;
        var methodArguments = method.IsGenericMethod ? method.GetGenericArguments() : null;
        var member = method.Module.ResolveMember(token, typeArguments, methodArguments);
        if (member is Type type) yield return type;
        if (member?.DeclaringType is { } declaring) yield return declaring;
        if (member is MethodInfo called)
        {
            yield return called.ReturnType;
            foreach (var argument in called.IsGenericMethod ? called.GetGenericArguments() : []) yield return argument;
        }
    }
}
