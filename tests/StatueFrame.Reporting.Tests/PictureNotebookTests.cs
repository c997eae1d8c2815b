using System.Reflection;
using System.Xml.Linq;
using StatueFrame.Analysis;

namespace StatueFrame.Reporting.Tests;

public class PictureNotebookTests
{
    [Fact]
    public void A_picture_shows_itself_as_a_drawing_with_its_description()
    {
        Picture picture = StatueDrawings.Elevation(StatueModel.Build(Study.Heron("\"heron\" <1>")));
        Attribute attribute = typeof(Picture).GetCustomAttributes().Single(a => a.GetType().Name == "TypeFormatterSourceAttribute");
        object source = Activator.CreateInstance((Type)attribute.GetType().GetProperty("FormatterSourceType")!.GetValue(attribute)!)!;
        object formatter = ((IEnumerable<object>)source.GetType().GetMethod("CreateTypeFormatters")!.Invoke(source, [])!).Single();
        using var writer = new StringWriter();
        Assert.Equal(true, formatter.GetType().GetMethod("Format")!.Invoke(formatter, [picture, writer]));
        XElement image = XElement.Parse(writer.ToString());
        Assert.Contains(picture.Title, (string)image.Attribute("alt")!);
        string svg = ((string)image.Attribute("src")!)["data:image/svg+xml;base64,".Length..];
        Assert.Equal("svg", XDocument.Parse(System.Text.Encoding.UTF8.GetString(Convert.FromBase64String(svg))).Root!.Name.LocalName);
        Assert.Equal(false, formatter.GetType().GetMethod("Format")!.Invoke(formatter, ["no picture", writer]));
    }
}
