using System.Globalization;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Cupping;
using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;

namespace GreenLedger.Documents.Cupping;

/// <summary>
/// The descriptive form of one code on paper, below its score sheet: a ruler for each intensity in two columns, then each list of
/// words with a square before every word. It is never broken over two pages.
/// </summary>
internal sealed class DescriptionBlock(DescriptiveRules rules, LineBreaker breaker)
{
    private const double Row = 13.5;
    private const double Line = 11;
    private const double Name = 62;
    private const double Between = 20;
    private const double Square = 6.5;
    private const double AfterSquare = 2.5;
    private const double AfterWord = 6;
    private const double Foot = 10;

    private static readonly XFont Label = Faces.Regular(8.5);
    private static readonly XFont Head = Faces.Bold(8);
    private static readonly XFont Word = Faces.Regular(7.5);
    private static readonly XFont Narrow = Faces.Regular(7);
    private static readonly XFont Small = Faces.Regular(6);

    private readonly IReadOnlyList<(string Head, IReadOnlyList<PlacedWord> Words, int Lines)> _lists = [.. rules.Lists.Select(list => Flow(list, breaker))];

    private int Rows => (rules.Intensities.Count + 1) / 2;

    public double Height => Rows * Row + 4 + _lists.Sum(list => Line + list.Lines * Line) + Foot;

    public void Place(Paper paper)
    {
        paper.MakeRoom(Height);
        var top = paper.Here;
        paper.Place(Height, stage => Draw(stage, top));
    }

    private void Draw(Stage stage, double top)
    {
        var width = (Paper.Width - Between) / 2;
        foreach (var (at, line) in rules.Intensities.Index())
        {
            Intensity(stage, line, Paper.Left + (at < Rows ? 0 : width + Between), top + at % Rows * Row, width);
        }

        var y = top + Rows * Row + 4;
        foreach (var (head, words, lines) in _lists)
        {
            Say(stage, head, Head, Ink.Dark, Paper.Left, y + 9);
            stage.Element(PdfBlockLevelElementTag.Paragraph, () => words.ToList().ForEach(word => stage.Graphics.DrawString(word.Text, word.Font, Ink.Dark.Brush(), Paper.Left + word.X + Square + AfterSquare, y + Line * (word.Line + 1) + 8)));
            stage.Ornament(() => words.ToList().ForEach(word => stage.Graphics.DrawRectangle(Ink.Dark.Pen(0.7), Paper.Left + word.X, y + Line * (word.Line + 1) + 2, Square, Square)));
            y += Line * (lines + 1);
        }
    }

    /// <summary>A tick for each step, numbers at the ends and at every fifth.</summary>
    private static void Intensity(Stage stage, IntensityLine line, double left, double top, double width)
    {
        Say(stage, line.Name, Label, Ink.Dark, left, top + 10);
        var (from, length, axis) = (left + Name, width - Name - 6, top + 11);
        stage.Ornament(() =>
        {
            stage.Graphics.DrawLine(Ink.Soft.Pen(), from, axis, from + length, axis);
            for (var step = 0; step <= line.Highest; step++)
            {
                var x = from + length * step / line.Highest;
                var isNumbered = step % 5 == 0 || step == line.Highest;
                stage.Graphics.DrawLine(Ink.Soft.Pen(isNumbered ? 0.9 : 0.5), x, axis - (isNumbered ? 4 : 2), x, axis + 1);
                if (isNumbered)
                {
                    var number = step.ToString(CultureInfo.InvariantCulture);
                    stage.Graphics.DrawString(number, Small, Ink.Soft.Brush(), x - stage.Graphics.MeasureString(number, Small).Width / 2, axis - 5);
                }
            }
        });
    }

    /// <summary>The words side by side over as many lines as they need; narrower words are smaller and follow their broader one.</summary>
    private static (string Head, IReadOnlyList<PlacedWord> Words, int Lines) Flow(CheckList list, LineBreaker breaker)
    {
        var placed = new List<PlacedWord>();
        var (x, line) = (0.0, 0);
        foreach (var word in list.Words)
        {
            var font = word.Parent is null ? Word : Narrow;
            var needs = Square + AfterSquare + breaker.WidthOf(word.Word, font);
            if (x > 0 && x + needs > Paper.Width)
            {
                (x, line) = (0, line + 1);
            }

            placed.Add(new PlacedWord(word.Word, font, x, line));
            x += needs + AfterWord;
        }

        return (string.Create(CultureInfo.InvariantCulture, $"{list.Name}: tick at most {list.MostPicks}"), placed, line + 1);
    }

    private static void Say(Stage stage, string text, XFont font, XColor colour, double x, double baseline) =>
        stage.Element(PdfBlockLevelElementTag.Paragraph, () => stage.Graphics.DrawString(text, font, colour.Brush(), x, baseline));

    private sealed record PlacedWord(string Text, XFont Font, double X, int Line);
}
