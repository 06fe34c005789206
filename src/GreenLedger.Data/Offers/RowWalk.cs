using System.Linq.Expressions;
using Microsoft.EntityFrameworkCore.Metadata;

namespace GreenLedger.Data.Offers;

/// <summary>A row on its way into the database, which takes its values one column after the other.</summary>
internal interface IRowOut
{
    void Null();

    void Value<TValue>(TValue value);
}

/// <summary>Compiles the walk from an entity to the stored value of each column, without a box for any of them.</summary>
internal static class RowWalk
{
    public static Action<TOut, T> To<TOut, T>(IEnumerable<IProperty> columns)
        where TOut : IRowOut
    {
        var (to, from) = (Expression.Parameter(typeof(TOut)), Expression.Parameter(typeof(T)));
        var writes = columns.Select(column => Write(to, from, Path(column), column));
        return Expression.Lambda<Action<TOut, T>>(Expression.Block(writes), to, from).Compile();
    }

    /// <summary>Null is written where a value on the way is not there.</summary>
    private static Expression Write(Expression to, Expression from, Stack<string> path, IProperty column)
    {
        if (Nullable.GetUnderlyingType(from.Type) is not null)
        {
            return Expression.IfThenElse(
                Expression.Property(from, "HasValue"), Write(to, Expression.Property(from, "Value"), path, column), Expression.Call(to, nameof(IRowOut.Null), null));
        }

        if (path.Count > 0)
        {
            return Write(to, Expression.Property(from, path.Pop()), path, column);
        }

        var stored = column.GetTypeMapping().Converter?.ConvertToProviderExpression is { } convert
            ? Expression.Invoke(convert, Expression.Convert(from, convert.Parameters[0].Type)) : from;
        var write = Expression.Call(to, nameof(IRowOut.Value), [stored.Type], stored);
        return from.Type.IsValueType
            ? write
            : Expression.IfThenElse(Expression.ReferenceEqual(from, Expression.Constant(null)), Expression.Call(to, nameof(IRowOut.Null), null), write);
    }

    private static Stack<string> Path(IProperty property)
    {
        var path = new Stack<string>([property.Name]);
        for (var type = property.DeclaringType; type is IComplexType { ComplexProperty: var value }; type = value.DeclaringType)
        {
            path.Push(value.Name);
        }

        return path;
    }
}
