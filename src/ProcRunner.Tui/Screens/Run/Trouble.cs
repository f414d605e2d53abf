namespace ProcRunner.Tui.Screens.Run;

/// <summary>Why something wasn't taken, and what can be done.</summary>
internal sealed record Trouble(string Why, IReadOnlyList<string> WhatToDo);
