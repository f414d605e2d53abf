using System.Globalization;
using System.Runtime.CompilerServices;
using ProcRunner.People;
using ProcRunner.Shop;
using ProcRunner.Store.Local;

namespace ProcRunner.Tui.Shell;

/// <summary>
/// Where every PIN is tried. Wrong ones are written to the shop book before the answer is given, and after a few of them
/// the person's PIN isn't tried until a while has gone by, here and after a restart.
/// </summary>
/// <remarks>
/// While the program runs the wait goes by a clock that nobody can set. A start takes the wall clock's word for the time since
/// the last wrong PIN, but not for a time before it: then the wait begins anew.
/// </remarks>
internal sealed class PinGate
{
    private static readonly ConditionalWeakTable<LocalStore, PinGate> Gates = [];

    private readonly Func<ShopState> _shop;
    private readonly Func<string, ShopEvent, AppendResult> _append;
    private readonly TimeProvider _time;
    private readonly Dictionary<string, Seen> _seen = new(StringComparer.Ordinal);

    /// <summary>A gate.</summary>
    /// <param name="shop">The shop as it is now.</param>
    /// <param name="append">Writes an event to the shop book, durably, in somebody's name.</param>
    /// <param name="time">The clock.</param>
    public PinGate(Func<ShopState> shop, Func<string, ShopEvent, AppendResult> append, TimeProvider time)
    {
        (_shop, _append, _time) = (shop, append, time);
        foreach (string id in shop().WrongPins.Keys)
        {
            Left(id);
        }
    }

    /// <summary>The one gate of a store.</summary>
    public static PinGate Of(LocalStore store, TimeProvider time) =>
        Gates.GetValue(store, s => new(() => s.Shop, (by, happened) => s.AppendShop(by, happened), time));

    /// <summary>How long a person's PIN isn't tried yet.</summary>
    public TimeSpan Left(string id)
    {
        if (!_shop().WrongPins.TryGetValue(id, out WrongPins? wrong))
        {
            _seen.Remove(id);
            return TimeSpan.Zero;
        }

        if (!_seen.TryGetValue(id, out Seen seen) || seen.Wrong != wrong)
        {
            TimeSpan gone = _time.GetUtcNow() - wrong.LastAt;
            seen = new(wrong, gone > TimeSpan.Zero ? gone : TimeSpan.Zero, _time.GetTimestamp());
            _seen[id] = seen;
        }

        return PinWait.Left(wrong, seen.Gone + _time.GetElapsedTime(seen.Stamp));
    }

    /// <summary>Opens a person's key; null with what to say to whoever typed the PIN.</summary>
    public UnlockedKey? TryUnlock(Person person, string pin, out string fault)
    {
        TimeSpan left = Left(person.Id);
        if (left > TimeSpan.Zero)
        {
            fault =
                $"After {Count(person.Id)} wrong PINs in a row {person.Name}'s PIN is tried again in {InWords(left)}.";
            return null;
        }

        UnlockedKey? key = PersonKeys.TryUnlock(person, pin);
        bool held = _shop().WrongPins.ContainsKey(person.Id);
        ShopEvent? happened =
            key is null ? new ShopEvent.PinRefused(person.Id, Count(person.Id) + 1)
            : held ? new ShopEvent.PinAccepted(person.Id)
            : null;
        if (happened is not null && Trouble(happened) is { } trouble)
        {
            // A wrong PIN that can't be written down would be a free guess; so the right one tells nothing either.
            key?.Dispose();
            fault = $"NOT WRITTEN: {trouble}. No PIN can be tried now.";
            return null;
        }

        fault = key is null ? Refused(person) : "";
        return key;
    }

    /// <summary>A wait for a person: whole minutes, or seconds below two.</summary>
    public static string InWords(TimeSpan wait) =>
        wait > TimeSpan.FromMinutes(2)
            ? string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(wait.TotalMinutes)} minutes")
            : string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(wait.TotalSeconds)} seconds");

    private long Count(string id) => _shop().WrongPins.GetValueOrDefault(id)?.InARow ?? 0;

    private string Refused(Person person)
    {
        TimeSpan left = Left(person.Id);
        return left > TimeSpan.Zero
            ? $"That is not the PIN of {person.Name}. It is tried again in {InWords(left)}."
            : $"That is not the PIN of {person.Name}.";
    }

    private string? Trouble(ShopEvent happened) =>
        _append("", happened) switch
        {
            AppendResult.Failed failed => failed.Why,
            AppendResult.Refused refused => refused.Why,
            _ => null,
        };

    private readonly record struct Seen(WrongPins Wrong, TimeSpan Gone, long Stamp);
}
