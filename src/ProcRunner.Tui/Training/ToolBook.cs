using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Trail;

namespace ProcRunner.Tui.Training;

/// <summary>
/// Where a tool stands in the metal while nobody has typed yet where it stopped: on the disk with every turn, so that what was
/// passed is gone though the program be killed.
/// </summary>
/// <param name="folder">The practice room's folder.</param>
internal sealed class ToolBook(string folder)
{
    private readonly RoomFile _file = new(Path.Combine(folder, "tool.json"));

    /// <summary>Where a tool stands.</summary>
    /// <param name="At">The cut.</param>
    /// <param name="Pass">Which pass of it, from 0: of another one it says nothing.</param>
    /// <param name="Turns">How often it was fed.</param>
    /// <param name="Shows">What the readout shows.</param>
    public readonly record struct Stand(At At, int Pass, int Turns, Quantity Shows);

    /// <summary>Where the tool of a job stands; null: in no metal.</summary>
    public Stand? Read(Plan plan, string job) =>
        _file[job] is Json.Map map
        && map.TextAt("step") is { } step
        && plan.TryStep(step, out int index)
        && map.TextAt("position") is { } place
        && (plan.TryPosition(place, out int position) || place == plan.PositionName(position = At.Head))
        && map.WholeAt("pass") is { } pass
        && map.WholeAt("turns") is { } turns
        && Quantity.TryParse(map.TextAt("shows") ?? "", out Quantity shows)
            ? new Stand(new At(index, position), (int)pass, (int)turns, shows)
            : null;

    /// <summary>Keeps where the tool of a job stands now.</summary>
    public void Keep(Plan plan, string job, Stand stand) =>
        _file.Keep(
            job,
            Json.MapOf([
                ("step", new Json.Text(plan.Steps[stand.At.Step].FullName)),
                ("position", new Json.Text(plan.PositionName(stand.At.Position))),
                ("pass", new Json.Whole(stand.Pass)),
                ("turns", new Json.Whole(stand.Turns)),
                ("shows", new Json.Text(stand.Shows.ToString())),
            ])
        );

    /// <summary>The tool is out of the metal.</summary>
    public void Clear(string job)
    {
        if (_file[job] is not null)
        {
            _file.Keep(job, null);
        }
    }
}
