namespace GreenLedger.Web.People;

/// <summary>A request sent by POST that changes nothing, such as a calculator: who may read the area may send it.</summary>
[AttributeUsage(AttributeTargets.Class | AttributeTargets.Method)]
internal sealed class StoresNothingAttribute : Attribute;
