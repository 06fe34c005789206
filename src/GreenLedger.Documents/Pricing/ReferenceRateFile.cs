using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Xml;
using GreenLedger.Domain;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.Documents.Pricing;

/// <summary>
/// Reads the files of euro reference rates that the European Central Bank publishes: the daily and historic XML, the
/// historic and daily CSV, each also zipped (handbook, trade 9.4). What the file is, its content says, not its name.
/// Files are taken for hostile: no document type or entity is read, and sizes are limited, packed and unpacked.
/// </summary>
public static class ReferenceRateFile
{
    public const int LargestFile = 16 * 1024 * 1024;

    private const int LargestUnpacked = 64 * 1024 * 1024;
    private const string RateNamespace = "http://www.ecb.int/vocabulary/2002-08-01/eurofxref";
    private const string NoRates = "This is no file of reference rates: choose the daily or historic file, as XML, CSV or ZIP, that the European Central Bank publishes.";

    /// <summary>The lines of the file, newest or oldest first as it has them, or the problems that stop it.</summary>
    public static RateFile Read(byte[] file)
    {
        if (file.Length > LargestFile)
        {
            return Refused($"The file is larger than {LargestFile / 1024 / 1024} MB: choose the file of reference rates itself.");
        }

        try
        {
            var content = IsZip(file) ? Unpack(file) : file;
            return content is null ? Refused(NoRates)
                : IsXml(content) ? ReadXml(content)
                : ReferenceRateTable.Read(Encoding.UTF8.GetString(content), NoRates);
        }
        catch (InvalidDataException)
        {
            // A damaged archive, or one that unpacks to more than its limit, says so by this exception.
            return Refused("The archive cannot be unpacked: it is damaged or too large.");
        }
        catch (XmlException broken)
        {
            // The reader refuses what is no well-formed XML or carries a document type.
            return new RateFile([], [new Problem(broken.LineNumber, null, "The XML cannot be read here: it is damaged, or has a document type, which no file of reference rates has.")]);
        }
    }

    internal static RateFile Refused(string sentence) => new([], [new Problem(null, null, sentence)]);

    private static bool IsZip(byte[] file) => file.AsSpan().StartsWith("PK\u0003\u0004"u8);

    private static bool IsXml(byte[] content)
    {
        var text = content.AsSpan();
        text = text.StartsWith(Encoding.UTF8.Preamble) ? text[3..] : text;
        return text.TrimStart(" \t\r\n"u8).StartsWith("<"u8);
    }

    private static byte[]? Unpack(byte[] file)
    {
        using var archive = new ZipArchive(new MemoryStream(file), ZipArchiveMode.Read);
        var entry = archive.Entries.FirstOrDefault(entry =>
            entry.Name.EndsWith(".csv", StringComparison.OrdinalIgnoreCase) || entry.Name.EndsWith(".xml", StringComparison.OrdinalIgnoreCase));
        if (entry is null)
        {
            return null;
        }

        using var packed = entry.Open();
        using var unpacked = new MemoryStream();
        var block = new byte[81_920];
        for (var read = packed.Read(block); read > 0; read = packed.Read(block))
        {
            if (unpacked.Length + read > LargestUnpacked)
            {
                throw new InvalidDataException("The archive unpacks to more than the limit.");
            }

            unpacked.Write(block, 0, read);
        }

        return unpacked.ToArray();
    }

    private static RateFile ReadXml(byte[] content)
    {
        var settings = new XmlReaderSettings
        {
            DtdProcessing = DtdProcessing.Prohibit,
            XmlResolver = null,
            MaxCharactersInDocument = LargestUnpacked,
        };
        using var reader = XmlReader.Create(new MemoryStream(content), settings);
        var lines = new List<RateLine>();
        var problems = new List<Problem>();
        DateOnly? on = null;
        while (reader.Read())
        {
            if (reader.NodeType == XmlNodeType.Element && reader.LocalName == "Cube" && reader.NamespaceURI == RateNamespace)
            {
                on = reader.GetAttribute("time") is { } time ? ReadDay(time, Row(reader), problems) : on;
                if (reader.GetAttribute("currency") is { } code && on is { } day)
                {
                    ReadRate(code, day, reader.GetAttribute("rate"), Row(reader), lines, problems);
                }
            }
        }

        return lines.Count + problems.Count == 0 ? Refused(NoRates) : new RateFile(problems.Count == 0 ? lines : [], problems);
    }

    private static int Row(XmlReader reader) => ((IXmlLineInfo)reader).LineNumber;

    internal static DateOnly? ReadDay(string text, int row, List<Problem> problems)
    {
        if (DateOnly.TryParseExact(text.Trim(), ["yyyy-MM-dd", "d MMMM yyyy"], CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
        {
            return day;
        }

        problems.Add(new Problem(row, null, $"'{Short(text)}' is not a day such as 2026-11-24."));
        return null;
    }

    internal static void ReadRate(string code, DateOnly on, string? text, int row, List<RateLine> lines, List<Problem> problems)
    {
        if (decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var rate)
            && rate is > 0m and <= 1_000_000_000m && decimal.Round(rate, 8) == rate)
        {
            lines.Add(new RateLine(code, on, rate));
        }
        else
        {
            problems.Add(new Problem(row, code, $"'{Short(text ?? "")}' is not a rate: it is a number above zero with a decimal point."));
        }
    }

    private static string Short(string text) => text.Length <= 40 ? text : text[..40] + "…";
}
