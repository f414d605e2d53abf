namespace ProcRunner.Procedures;

/// <summary>A stage of the work, ended by a sign-off.</summary>
/// <param name="Index">Place in the procedure, from 0.</param>
/// <param name="Name">Name.</param>
/// <param name="Walk">Order inside.</param>
/// <param name="AsFound">True when its readings record the head as it came and are never asked again.</param>
/// <param name="Cautions">Cautions for the whole stage.</param>
/// <param name="FirstStep">Index of its first step.</param>
/// <param name="StepCount">How many steps it has.</param>
public sealed record Stage(
    int Index,
    string Name,
    Walk Walk,
    bool AsFound,
    IReadOnlyList<Caution> Cautions,
    int FirstStep,
    int StepCount
);
