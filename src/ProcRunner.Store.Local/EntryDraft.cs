using System.Collections.Immutable;
using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>What the caller knows of an entry; the store adds number, digests, time, bench and the shop book's state.</summary>
/// <param name="Operator">The id of the person at work, empty when nobody is.</param>
/// <param name="Events">What happened, at least one event.</param>
/// <param name="Anchor">Why the entry's digest goes into the shop book too.</param>
public sealed record EntryDraft(string Operator, ImmutableArray<Json.Map> Events, Anchor Anchor = Anchor.None);
