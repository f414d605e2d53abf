using System.CommandLine;
using ProcRunner.Endurance;

RootCommand root = new(
    "Long runs of the built program: killed again and again; compiled to native code; hostile inputs; damage."
)
{
    FaultsCommand.Create(),
    KillsCommand.Create(),
    NativeCommand.Create(),
    HostileCommand.Create(),
    BytesCommand.Create(),
    OpeningCommand.Create(),
};
return root.Parse(args).Invoke();
