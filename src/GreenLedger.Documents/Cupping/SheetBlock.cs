using System.Globalization;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Cupping;
using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;

namespace GreenLedger.Documents.Cupping;

/// <summary>
/// The sheet of one code on paper: a ruler with the form's steps and a box for each mark on the left, a square for each cup on
/// the right, and lines for words and notes below. It is never broken over two pages.
/// </summary>
internal sealed class SheetBlock(FormRules rules, int cups)
{
    private const double Head = 24;
    private const double Row = 18;
    private const double Line = 17;
    private const double Foot = 12;
    private const double Name = 80;
    private const double Box = 34;
    private const double Middle = 318;
    private const double Square = 11;

    private static readonly XFont Label = Faces.Regular(8.5);
    private static readonly XFont Small = Faces.Regular(6.5);

    public double Height => Head + Row * Math.Max(rules.Scales.Count(), rules.CupCounted.Count() + rules.Deductions.Count + 1) + 2 * Line + Foot;

    public void Place(Paper paper, string code, string place)
    {
        paper.MakeRoom(Height);
        var top = paper.Here;
        paper.Place(Height, stage => Draw(stage, code, place, top));
    }

    private void Draw(Stage stage, string code, string place, double top)
    {
        var (left, right) = (Paper.Left, Paper.Left + Paper.Width);
        stage.Ornament(() => stage.Graphics.DrawLine(Ink.Green.Pen(1), left, top, right, top));
        Say(stage, code, Faces.Bold(17), Ink.Dark, left, top + 18, PdfBlockLevelElementTag.Heading2);
        Say(stage, place, Label, Ink.Soft, left + Name, top + 18);
        var y = top + Head;
        foreach (var line in rules.Scales)
        {
            Scale(stage, line, left, y);
            y += Row;
        }

        y = top + Head;
        foreach (var name in rules.CupCounted.Select(line => $"{line.Name}: good cups").Concat(rules.Deductions.Select(line => $"{line.Name}: cups")))
        {
            Squares(stage, name, left + Middle, y);
            y += Row;
        }

        Say(stage, "Total (points)", Faces.Bold(8.5), Ink.Dark, left + Middle, y + 12);
        stage.Ornament(() => stage.Graphics.DrawRectangle(Ink.Dark.Pen(0.9), right - 60, y + 1, 60, Row - 3));
        Lines(stage, top + Height - Foot - 2 * Line, left, right);
    }

    /// <summary>The ruler has a tick for each step and a number at each whole point.</summary>
    private static void Scale(Stage stage, FormLine line, double left, double top)
    {
        Say(stage, line.Name, Label, Ink.Dark, left, top + 11);
        var (from, width, axis) = (left + Name + 6, Middle - Name - Box - 26, top + 12);
        stage.Ornament(() =>
        {
            stage.Graphics.DrawLine(Ink.Soft.Pen(), from, axis, from + width, axis);
            for (var mark = line.Lowest; mark <= line.Highest; mark += line.Step)
            {
                var (x, isWhole) = (from + (double)((mark - line.Lowest) / (line.Highest - line.Lowest)) * width, mark % 1m == 0m);
                stage.Graphics.DrawLine(Ink.Soft.Pen(isWhole ? 0.9 : 0.5), x, axis - (isWhole ? 4 : 2), x, axis + (isWhole ? 2 : 0));
                if (isWhole)
                {
                    var number = mark.ToString("0", CultureInfo.InvariantCulture);
                    stage.Graphics.DrawString(number, Small, Ink.Soft.Brush(), x - stage.Graphics.MeasureString(number, Small).Width / 2, axis - 5.5);
                }
            }

            stage.Graphics.DrawRectangle(Ink.Dark.Pen(), from + width + 10, top + 1, Box, Row - 3);
        });
    }

    private void Squares(Stage stage, string name, double left, double top)
    {
        Say(stage, name, Label, Ink.Dark, left, top + 11);
        stage.Ornament(() =>
        {
            for (var cup = 0; cup < cups; cup++)
            {
                stage.Graphics.DrawRectangle(Ink.Dark.Pen(), Paper.Left + Paper.Width - (cups - cup) * (Square + 4) + 4, top + 2, Square, Square);
            }
        });
    }

    private static void Lines(Stage stage, double top, double left, double right)
    {
        Say(stage, "What you taste", Label, Ink.Soft, left, top + 13);
        Say(stage, "Notes", Label, Ink.Soft, left, top + Line + 13);
        stage.Ornament(() =>
        {
            for (var line = 1; line <= 2; line++)
            {
                stage.Graphics.DrawLine(Ink.Rule.Pen(0.8), left + Name, top + line * Line - 2, right, top + line * Line - 2);
            }
        });
    }

    private static void Say(Stage stage, string text, XFont font, XColor colour, double x, double baseline, PdfBlockLevelElementTag tag = PdfBlockLevelElementTag.Paragraph) =>
        stage.Element(tag, () => stage.Graphics.DrawString(text, font, colour.Brush(), x, baseline));
}
