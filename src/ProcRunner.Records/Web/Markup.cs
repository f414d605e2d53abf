using System.Text;
using ProcRunner.Text;

namespace ProcRunner.Records.Web;

/// <summary>Builds markup; every text and every attribute's value goes through here, and none gets out unescaped.</summary>
internal sealed class Markup
{
    private readonly StringBuilder _built = new();

    /// <summary>What the program itself writes: tags and attributes, never a text that came from somewhere.</summary>
    public Markup Raw(string markup)
    {
        _built.Append(markup);
        return this;
    }

    /// <summary>A text: what can't be seen is written out, what means something in markup is escaped.</summary>
    public Markup Text(string text)
    {
        foreach (char c in SafeText.Show(text))
        {
            _ = c switch
            {
                '&' => _built.Append("&amp;"),
                '<' => _built.Append("&lt;"),
                '>' => _built.Append("&gt;"),
                '"' => _built.Append("&quot;"),
                '\'' => _built.Append("&#39;"),
                _ => _built.Append(c),
            };
        }

        return this;
    }

    /// <summary>A tag with a text inside.</summary>
    public Markup Element(string tag, string text, string attributes = "") =>
        Raw($"<{tag}{(attributes.Length > 0 ? " " : "")}{attributes}>").Text(text).Raw($"</{tag}>");

    /// <inheritdoc/>
    public override string ToString() => _built.ToString();
}
