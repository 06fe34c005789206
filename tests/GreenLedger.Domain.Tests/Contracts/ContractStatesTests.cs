using GreenLedger.Domain.Contracts;

namespace GreenLedger.Domain.Tests.Contracts;

/// <summary>The pictures in docs/contract-states.md are made from the machines themselves.</summary>
public sealed class ContractStatesTests
{
    public static TheoryData<string, string> Pictures => new()
    {
        { "goods", Mermaid(GoodsMachine.Picture()) },
        { "price", Mermaid(PriceMachine.Picture()) },
    };

    [Theory]
    [MemberData(nameof(Pictures))]
    public void The_picture_in_the_docs_is_the_machines_own(string machine, string picture)
    {
        var page = File.ReadAllText(Path.Combine(Root(), "docs", "contract-states.md")).ReplaceLineEndings("\n");

        Assert.True(page.Contains(picture, StringComparison.Ordinal), $"docs/contract-states.md should show the {machine} as:\n{picture}");
    }

    private static string Mermaid(string drawn) => $"```mermaid\n{drawn.ReplaceLineEndings("\n").Trim()}\n```";

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder!.FullName, "GreenLedger.sln")))
        {
            folder = folder.Parent;
        }

        return folder.FullName;
    }
}
