using System.CommandLine;
using ProcRunner.Tui.Commands;

RootCommand root = new(
    "ProcRunner steps a cylinder head from teardown to release, gate by gate, and keeps who did what."
)
{
    RunVerb.Create(),
    CheckVerb.Create(),
    WorkVerb.Create(),
};
return root.Parse(args).Invoke();
