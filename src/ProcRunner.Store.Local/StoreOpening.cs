using System.Globalization;
using ProcRunner.Text;
using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>What came of opening or founding a store.</summary>
public abstract record StoreOpening
{
    private StoreOpening() { }

    /// <summary>The outcome in plain words.</summary>
    public abstract string InWords();

    /// <summary>It is open; nobody else writes to it until it is disposed.</summary>
    public sealed record Opened(LocalStore Store) : StoreOpening
    {
        /// <inheritdoc/>
        public override string InWords() => "The store is open.";
    }

    /// <summary>Someone else holds it.</summary>
    /// <param name="Holder">Who, null when that can't be read.</param>
    public sealed record InUse(Holder? Holder) : StoreOpening
    {
        /// <inheritdoc/>
        public override string InWords() => $"The store is in use by {Holder?.InWords() ?? "another program"}.";
    }

    /// <summary>There is no store in the folder.</summary>
    public sealed record NoStore : StoreOpening
    {
        /// <inheritdoc/>
        public override string InWords() => "There is no store in this folder.";
    }

    /// <summary>A store, or something else, is in the folder already.</summary>
    public sealed record AlreadyThere : StoreOpening
    {
        /// <inheritdoc/>
        public override string InWords() =>
            "There is a store, or something else, in this folder already: a new store needs a folder of its own.";
    }

    /// <summary>The store's format isn't one that this program knows.</summary>
    public sealed record UnknownFormat : StoreOpening
    {
        /// <inheritdoc/>
        public override string InWords() =>
            "This store was made by another version of the program; it can't be opened safely.";
    }

    /// <summary>The folder doesn't keep a second program out, as some network folders don't.</summary>
    public sealed record LockingFails : StoreOpening
    {
        /// <inheritdoc/>
        public override string InWords() =>
            "Locking doesn't work in this folder (is it on a network?): two programs could write at once. Use a folder on this machine's own disk.";
    }

    /// <summary>The shop book doesn't hold.</summary>
    /// <param name="Verdict">What is wrong with it.</param>
    /// <param name="Jobs">How many jobs' trails there are.</param>
    /// <param name="Holding">How many of them hold by themselves.</param>
    public sealed record BookBroken(TrailVerdict Verdict, int Jobs, int Holding) : StoreOpening
    {
        /// <inheritdoc/>
        public override string InWords() =>
            string.Create(
                CultureInfo.InvariantCulture,
                $"The shop book doesn't hold, so nothing is written to this store. {Verdict.InWords()} The jobs' trails are apart from it: {Holding} of {Jobs} hold by themselves, and procrunner jobs, find, show and verify read them as before. The way on: put back book.trail from a backup; what it lacks of the jobs is entered again from their trails. Without one, found a new store elsewhere and keep this one to be read."
            );
    }

    /// <summary>The folder can't be read or written.</summary>
    public sealed record Unusable(string Why) : StoreOpening
    {
        /// <inheritdoc/>
        public override string InWords() => $"The store's folder can't be used: {SafeText.Show(Why)}";
    }
}
