using System.Globalization;
using Microsoft.AspNetCore.Mvc.ModelBinding;
using Microsoft.AspNetCore.Mvc.ModelBinding.Binders;

namespace GreenLedger.Web.Hosting;

/// <summary>
/// Figures of forms are written with a decimal point and without a sign between thousands. The framework would skip a comma,
/// and make 125 of 12,5.
/// </summary>
internal sealed class FigureBinding : IModelBinderProvider
{
    private const NumberStyles Styles = NumberStyles.Float;

    public IModelBinder? GetBinder(ModelBinderProviderContext context)
    {
        var log = context.Services.GetRequiredService<ILoggerFactory>();
        var type = context.Metadata.UnderlyingOrModelType;
        return type == typeof(decimal) ? new DecimalModelBinder(Styles, log) : type == typeof(double) ? new DoubleModelBinder(Styles, log) : null;
    }
}
