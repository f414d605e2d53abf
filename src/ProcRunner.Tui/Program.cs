return ProcRunner.Tui.Commands.CommandLine.Invoke(args);
