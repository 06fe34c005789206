using System.Text.RegularExpressions;

namespace GreenLedger.Web.Tests.Delivery;

/// <summary>One line of a Dockerfile: <c>RUN</c> and what it runs.</summary>
internal sealed record DockerStep(string Instruction, string Text);

/// <summary>From one <c>FROM</c> to the next.</summary>
internal sealed record DockerStage(string Image, string Name, IReadOnlyList<DockerStep> Steps)
{
    public string Last(string instruction) => Steps.Last(step => step.Instruction == instruction).Text;
}

/// <summary>Reads as much of a Dockerfile as ours uses; a line it can't read is an error.</summary>
internal static partial class Dockerfile
{
    public static IReadOnlyList<DockerStage> Parse(string text)
    {
        var stages = new List<DockerStage>();
        foreach (var line in Continued().Replace(text, " ").Split('\n').Where(line => line.Trim() is not "" && line[0] != '#'))
        {
            var step = Step().Match(line);
            Assert.True(step.Success, $"This line of the Dockerfile can't be read: {line}");
            Take(stages, step.Groups[1].Value, step.Groups[2].Value.Trim());
        }

        return stages;
    }

    private static void Take(List<DockerStage> stages, string instruction, string text)
    {
        if (instruction == "FROM")
        {
            var parts = text.Split(" AS ");
            stages.Add(new DockerStage(parts[0], parts.ElementAtOrDefault(1) ?? "", []));
        }
        else
        {
            stages[^1] = stages[^1] with { Steps = [.. stages[^1].Steps, new DockerStep(instruction, text)] };
        }
    }

    [GeneratedRegex(@"\\\r?\n")]
    private static partial Regex Continued();

    [GeneratedRegex("^(FROM|COPY|ENV|WORKDIR|RUN|VOLUME|EXPOSE|USER|HEALTHCHECK|ENTRYPOINT) +(.+)$")]
    private static partial Regex Step();
}
