using System.CommandLine;
using System.CommandLine.Help;
using ProcRunner.Tui.Host;

namespace ProcRunner.Tui.Commands;

/// <summary>The command line: every verb, and how a call becomes an exit status.</summary>
internal static class CommandLine
{
    private const int HelpWidth = 100;

    /// <summary>Does what the words after the program's name ask for.</summary>
    /// <returns>The exit status.</returns>
    public static int Invoke(string[] args)
    {
        // A word that begins with @ is a word, not a file to read more words from.
        ParserConfiguration parser = new() { ResponseFileTokenReplacer = null };
        ParseResult parsed = Root().Parse(args, parser);
        if (parsed.Errors.Count > 0)
        {
            return Say.Usage(
                string.Join(' ', parsed.Errors.Select(e => UsageWords.Of(e.Message))),
                "procrunner --help lists the verbs, procrunner VERB --help what one takes."
            );
        }

        try
        {
            return parsed.Invoke(new InvocationConfiguration { EnableDefaultExceptionHandler = false });
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Say.Usage(e.Message, "");
        }
        finally
        {
            ScreenHost.LeaveKeysPlain();
        }
    }

    private static RootCommand Root()
    {
        RootCommand root = new(
            "ProcRunner steps a cylinder head from teardown to release, gate by gate, and keeps who did what."
        )
        {
            RunVerb.Create(),
            OpenVerb.Create(),
            JobsVerb.Create(),
            FindVerb.Create(),
            ShowVerb.Create(),
            CompareVerb.Create(),
            TrendVerb.Create(),
            RecallVerb.Create(),
            BackupVerb.Create(),
            RecordVerb.Create(),
            VerifyVerb.Create(),
            ExportVerb.Create(),
            ImportVerb.Create(),
            PeopleVerb.Create(),
            GaugesVerb.Create(),
            CheckVerb.Create(),
            PracticeVerb.Create(),
            RehearseVerb.Create(),
            WorkVerb.Create(),
        };
        root.Options.Add(StoreOption.Store);
        root.SetAction(parsed => ScreenRun.Open(StoreOption.Given(parsed), stamp: null));
        foreach (HelpOption help in root.Options.OfType<HelpOption>())
        {
            help.Action = new HelpAction { MaxWidth = HelpWidth };
        }

        return root;
    }
}
