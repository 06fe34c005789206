using System.Text.RegularExpressions;

namespace GreenLedger.Web.Tests.Delivery;

/// <summary>
/// Carries out the Dockerfile without Docker: each stage is a folder, each step's command runs there in order, and an
/// absolute path means the same path in that folder. The images themselves stand for programs of this machine: the .NET
/// SDK and Node.
/// </summary>
public sealed partial class ImageFixture : IAsyncLifetime
{
    private readonly string _folder = Directory.CreateTempSubdirectory("greenledger-image-").FullName;
    private readonly Dictionary<string, string> _workFolders = [];

    internal IReadOnlyList<DockerStage> Stages { get; } =
        Dockerfile.Parse(File.ReadAllText(Path.Combine(Shell.Project(), "Dockerfile")));

    internal DockerStage Final => Stages[^1];

    /// <summary>The settings of the last stage, as a container would see them.</summary>
    internal Dictionary<string, string> Settings { get; } = [];

    /// <summary>Where the program lies in the last stage.</summary>
    internal string ProgramFolder => WorkFolder(Final);

    public async ValueTask InitializeAsync()
    {
        foreach (var stage in Stages)
        {
            var settings = new Dictionary<string, string>
            {
                ["APP_UID"] = (await Shell.RunAsync("id -u", _folder, Settings)).Output.Trim(), // set by the base image
                ["MSBUILDDISABLENODEREUSE"] = "1",
            };
            Directory.CreateDirectory(Inside(stage, "/"));
            foreach (var step in stage.Steps)
            {
                await CarryOutAsync(stage, step, settings);
            }

            if (stage == Final)
            {
                settings.ToList().ForEach(setting => Settings.Add(setting.Key, setting.Value));
            }
        }
    }

    public ValueTask DisposeAsync()
    {
        Directory.Delete(_folder, recursive: true);
        return ValueTask.CompletedTask;
    }

    /// <summary>The text with every absolute path of the last stage led into its folder.</summary>
    internal string Here(string text) => Led(Final, text);

    private async Task CarryOutAsync(DockerStage stage, DockerStep step, Dictionary<string, string> settings)
    {
        switch (step.Instruction)
        {
            case "WORKDIR":
                _workFolders[FolderOf(stage)] = step.Text;
                Directory.CreateDirectory(WorkFolder(stage));
                break;
            case "ENV":
                Set(stage, step.Text, settings);
                break;
            case "COPY":
                await CopyAsync(stage, step.Text);
                break;
            case "RUN":
                var (code, output) = await Shell.RunAsync(Led(stage, step.Text), WorkFolder(stage), settings);
                Assert.True(code == 0, $"RUN {step.Text} ended in {code}:\n{output}");
                break;
        }
    }

    private void Set(DockerStage stage, string text, Dictionary<string, string> settings)
    {
        foreach (Match setting in Setting().Matches(text))
        {
            var path = Environment.GetEnvironmentVariable("PATH");
            var value = setting.Groups[2].Value.Trim('"').Replace("$PATH", path, StringComparison.Ordinal);
            settings[setting.Groups[1].Value] = setting.Groups[1].Value == "PATH" ? value : Led(stage, value);
        }
    }

    private async Task CopyAsync(DockerStage stage, string text)
    {
        var parts = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (!parts[0].StartsWith("--from=", StringComparison.Ordinal))
        {
            Assert.Equal([".", "."], parts);
            CopyProject(Shell.Project(), WorkFolder(stage));
            return;
        }

        var from = Stages.Single(one => one.Name == parts[0]["--from=".Length..]);
        if (from.Steps.Count == 0)
        {
            var (code, version) = await Shell.RunAsync($"{from.Name} --version", _folder, Settings);
            Assert.True(code == 0, $"{from.Image} stands for {from.Name} on this machine, which is missing: {version}");
            return;
        }

        var target = parts[2] == "." ? WorkFolder(stage) : Inside(stage, parts[2]);
        CopyFolder(Inside(from, parts[1]), target, _ => true);
    }

    /// <summary>What Docker would send: every file that .dockerignore does not name.</summary>
    private static void CopyProject(string from, string to)
    {
        var ignored = File.ReadAllLines(Path.Combine(from, ".dockerignore")).Where(line => line.Length > 0).ToList();
        CopyFolder(from, to, path =>
        {
            var relative = Path.GetRelativePath(from, path).Replace('\\', '/');
            return !ignored.Contains(relative) && !ignored.Contains($"**/{Path.GetFileName(path)}");
        });
    }

    private static void CopyFolder(string from, string to, Func<string, bool> takes)
    {
        Directory.CreateDirectory(to);
        foreach (var file in Directory.EnumerateFiles(from).Where(takes))
        {
            File.Copy(file, Path.Combine(to, Path.GetFileName(file)), overwrite: true);
        }

        foreach (var folder in Directory.EnumerateDirectories(from).Where(takes))
        {
            CopyFolder(folder, Path.Combine(to, Path.GetFileName(folder)), takes);
        }
    }

    private static string FolderOf(DockerStage stage) => stage.Name is "" ? "final" : stage.Name;

    private string WorkFolder(DockerStage stage) => Inside(stage, _workFolders.GetValueOrDefault(FolderOf(stage), "/"));

    private string Inside(DockerStage stage, string path) => Path.Combine(_folder, FolderOf(stage), path.TrimStart('/'));

    private string Led(DockerStage stage, string text) => AbsolutePath().Replace(text, path => Inside(stage, path.Value));

    [GeneratedRegex(@"(?<![\w./])/(app|data|source)\b")]
    private static partial Regex AbsolutePath();

    [GeneratedRegex("""(\w+)=("[^"]*"|\S+)""")]
    private static partial Regex Setting();
}
