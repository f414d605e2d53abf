using ProcRunner.Text;
using ProcRunner.Trail;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary>Words to whoever called the program.</summary>
internal static class Say
{
    /// <summary>What is wrong with the call or the environment, and what to do; the exit status.</summary>
    public static int Usage(string fault, string whatToDo)
    {
        Aside(fault);
        if (whatToDo.Length > 0)
        {
            Aside(whatToDo);
        }

        return Status.Usage;
    }

    /// <summary>The answer is no, and what to do; the exit status.</summary>
    public static int No(string why, string whatToDo = "")
    {
        Usage(why, whatToDo);
        return Status.No;
    }

    /// <summary>A line of the answer; what came from people or files is made safe for a terminal.</summary>
    public static void Line(string text = "") => Console.Out.WriteLine(SafeText.Show(text));

    /// <summary>A line beside the answer.</summary>
    public static void Aside(string text) => Console.Error.WriteLine(SafeText.Show(text));

    /// <summary>An answer for a script: one line of canonical JSON, without control characters in any text.</summary>
    public static void Json(Json answer)
    {
        using Stream output = Console.OpenStandardOutput();
        output.Write([.. CanonicalJson.Write(Cleaned(answer)), (byte)'\n']);
    }

    private static Json Cleaned(Json value) =>
        value switch
        {
            Json.Text text => new Json.Text(SafeText.Clean(text.Value)),
            Json.List list => new Json.List([.. list.Items.Select(Cleaned)]),
            Json.Map map => Trail.Json.MapOf([.. map.Items.Select(i => (i.Key, Cleaned(i.Value)))]),
            _ => value,
        };
}
