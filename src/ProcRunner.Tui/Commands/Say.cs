using ProcRunner.Trail;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary>Words to whoever called the program.</summary>
internal static class Say
{
    /// <summary>What is wrong with the call or the environment, and what to do; the exit status.</summary>
    public static int Usage(string fault, string whatToDo)
    {
        Console.Error.WriteLine(SafeText.Show(fault));
        if (whatToDo.Length > 0)
        {
            Console.Error.WriteLine(SafeText.Show(whatToDo));
        }

        return Status.Usage;
    }

    /// <summary>A line of the answer; what came from people or files is made safe for a terminal.</summary>
    public static void Line(string text) => Console.Out.WriteLine(SafeText.Show(text));
}
