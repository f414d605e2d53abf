using System.Globalization;
using ProcRunner.Quantities;
using ProcRunner.Runs.Prompts;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>
/// What is typed at one step until it is a whole entry: places one by one or several in a line, a part's number and then
/// its lot, a choice by its number. What it makes is what line mode takes in one line.
/// </summary>
internal sealed class EntryForm
{
    private readonly Prompt _prompt;
    private readonly FieldHint? _field;
    private readonly Func<IReadOnlyList<Quantity>, Quantity?, string?> _doubtOf;
    private Quantity? _first;
    private readonly List<(string Text, IReadOnlyList<Quantity> Values)> _given = [];
    private EntryOutcome.Doubt? _doubt;
    private bool _afresh;

    /// <summary>An empty form for a prompt.</summary>
    /// <param name="prompt">What is asked for.</param>
    /// <param name="field">What a reading is read as, with what is expected; null where none is taken.</param>
    /// <param name="doubtOf">What is hard to believe about the last of the places typed so far, with what was typed there first.</param>
    public EntryForm(Prompt prompt, FieldHint? field, Func<IReadOnlyList<Quantity>, Quantity?, string?> doubtOf) =>
        (_prompt, _field, _doubtOf) = (prompt, field, doubtOf);

    /// <summary>The place that was asked about and typed a second time alike, so that all need no second time; null for none.</summary>
    public string? Twice { get; private set; }

    /// <summary>The values given so far, place by place.</summary>
    public IReadOnlyList<Quantity> Values => [.. _given.SelectMany(g => g.Values)];

    /// <summary>True when something was given that isn't recorded yet.</summary>
    public bool IsBegun => _given.Count > 0;

    /// <summary>What is doubtful about what was typed, with its meanings; null when nothing is.</summary>
    public EntryOutcome.Doubt? Question =>
        _doubt ?? (_prompt.Question is { } asked && !_afresh ? new(asked.Typed, asked.Why, asked.Meanings) : null);

    /// <summary>What the entry line waits for now, in a word or two.</summary>
    public string Label =>
        Question is { Meanings.Count: > 0 } ? "which one"
        : _prompt.Awaits == Awaited.Reading && _prompt.Places.Count > 1 ? _prompt.Places[Values.Count]
        : _prompt.Awaits switch
        {
            Awaited.Readout or Awaited.NumberSet => "readout shows",
            Awaited.Reading => "reading",
            Awaited.Finding => "finding",
            Awaited.Choice => "choice",
            Awaited.Part => IsBegun ? "lot" : "part number",
            _ => "done",
        };

    /// <summary>What Enter alone does; empty when nothing.</summary>
    public string EnterDoes =>
        Question is not null
            ? ""
            : _prompt.Awaits switch
            {
                Awaited.NumberSet => "Enter: it shows that",
                Awaited.Done => "Enter: done",
                _ => "",
            };

    /// <summary>True while the prompt is the one it was made for.</summary>
    public bool Fits(Prompt prompt) => prompt.Awaits == _prompt.Awaits && prompt.At == _prompt.At;

    /// <summary>Takes a line.</summary>
    public EntryOutcome Take(string typed)
    {
        string text = typed.Trim();
        if (Question is { } question && Answered(question, text) is { } answered)
        {
            return answered;
        }

        return _prompt.Awaits switch
        {
            Awaited.Reading => Reading(text),
            Awaited.NumberSet when text.Length == 0 => Whole(
                _prompt.NumberToSet!.Value.Value.ToString(CultureInfo.InvariantCulture)
            ),
            Awaited.Readout or Awaited.NumberSet => text.Length == 0 ? Nothing() : Whole(text),
            Awaited.Finding or Awaited.Choice => Chosen(text),
            Awaited.Part => Part(text),
            _ => Done(text),
        };
    }

    /// <summary>Takes the last given place or part number back; false when nothing was given.</summary>
    public bool TakeBack()
    {
        _doubt = null;
        if (_given.Count == 0)
        {
            return false;
        }

        _given.RemoveAt(_given.Count - 1);
        return true;
    }

    // Null when what was typed is no answer to the question but a new entry.
    private EntryOutcome? Answered(EntryOutcome.Doubt question, string text)
    {
        if (text.Length == 0)
        {
            return Nothing();
        }

        // With no meanings to choose from, a number is the second reading.
        int choice = 0;
        bool numbered =
            question.Meanings.Count > 0
            && int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out choice);
        bool local = _doubt is not null;
        if (numbered && (choice == 0 || choice > question.Meanings.Count))
        {
            return new EntryOutcome.Fault(
                $"There is no {text} to choose.",
                ["Type the number that stands before what is meant, or the reading again with its point."]
            );
        }

        (_doubt, _afresh) = (null, true);
        return !numbered ? null
            : local ? Reading(question.Meanings[choice - 1])
            : Whole(question.Meanings[choice - 1]);
    }

    private EntryOutcome Reading(string text)
    {
        int places = Math.Max(1, _prompt.Places.Count);
        if (text.Length == 0)
        {
            return Nothing();
        }

        if (places == 1)
        {
            return Whole(text);
        }

        // All of them in one line, when some were typed already: they are typed anew.
        FieldHint all = new(_prompt.Unit!, places, places);
        if (IsBegun && EntryText.Parse(text, all) is EntryResult.Taken)
        {
            return Whole(text);
        }

        FieldHint left = new(_prompt.Unit!, 1, places - Values.Count, _field?.Low, _field?.High);
        switch (EntryText.Parse(text, left))
        {
            case EntryResult.Questioned doubt:
                return _doubt = new EntryOutcome.Doubt(text, doubt.Why, doubt.Meanings);
            case EntryResult.Taken taken:
                return Doubted(text, taken.Values) ?? Given(text, taken.Values, places);
            case EntryResult.Unreadable bad:
                return new EntryOutcome.Fault($"Read {bad.WhatWasRead}; expected {bad.Expected}.", [bad.WhatToDo]);
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }

    // One place at a time, so that the gauge is still there; a line of several is asked about as a whole.
    private EntryOutcome.Doubt? Doubted(string text, IReadOnlyList<Quantity> values)
    {
        IReadOnlyList<Quantity> soFar = [.. Values, .. values];
        if (values.Count > 1 || _doubtOf(soFar, null) is null)
        {
            _first = null;
            return null;
        }

        string? why = _doubtOf(soFar, _first);
        Twice = why is null ? Label : Twice;
        _first = why is null ? null : values[0];
        return why is null ? null : _doubt = new EntryOutcome.Doubt(text, why, []);
    }

    private EntryOutcome Given(string text, IReadOnlyList<Quantity> values, int places)
    {
        if (Values.Count + values.Count == places)
        {
            return Whole(EntryText.Join([.. _given.Select(g => g.Text), text], _prompt.Unit!));
        }

        _given.Add((text, values));
        return new EntryOutcome.More();
    }

    private EntryOutcome Chosen(string text)
    {
        if (text.Length == 0)
        {
            return Nothing();
        }

        bool numbered = int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int choice);
        return numbered && choice >= 1 && choice <= _prompt.Choices.Count ? Whole(_prompt.Choices[choice - 1])
            : text.Any(char.IsLetter) ? Whole(text)
            : new EntryOutcome.Fault($"There is no {text} to choose.", ["Type the number that stands before it."]);
    }

    private EntryOutcome Part(string text)
    {
        if (text.Length == 0)
        {
            return Nothing();
        }

        if (!IsBegun && text.Contains(',', StringComparison.Ordinal))
        {
            return Whole(text);
        }

        if (IsBegun)
        {
            return Whole($"{_given[0].Text}, {(text == "-" ? "no lot" : text)}");
        }

        _given.Add((text, []));
        return new EntryOutcome.More();
    }

    private static EntryOutcome Done(string text) =>
        text.Length == 0 || text.StartsWith("done", StringComparison.OrdinalIgnoreCase)
            ? Whole(text.Length == 0 ? "done" : text)
        : text.Any(char.IsLetter) ? Whole($"done, {text}")
        : new EntryOutcome.Fault($"{text}: nothing is measured here.", ["Enter alone says that it is done."]);

    private static EntryOutcome.Whole Whole(string text) => new(text);

    private EntryOutcome.Fault Nothing() =>
        new(
            "Nothing was typed.",
            [
                Question is { Meanings.Count: > 0 } || _prompt.Awaits is Awaited.Finding or Awaited.Choice
                    ? "Type the number that stands before what is meant, then Enter."
                    : $"Type what is asked for ({Label}), then Enter.",
            ]
        );
}
