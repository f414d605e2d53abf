using ProcRunner.People;
using ProcRunner.Practice.Bindings;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Screens;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Training;

/// <summary>The way into the practice room. Whoever opened it disposes it, and with it the room's store.</summary>
internal sealed class PracticeDoor : IDisposable
{
    private readonly LocalStore _store;

    private PracticeDoor(LocalStore store, string folder)
    {
        _store = store;
        Book = new DebriefBook(folder);
    }

    /// <summary>Who learns under no name of their own.</summary>
    public static (string Id, string Name, string Pin) Invented { get; } =
        (DemoShop.People[^1].Id, DemoShop.People[^1].Name, DemoShop.People[^1].Pin);

    /// <summary>The public PIN of somebody in the room: the invented people's, and one for every learner.</summary>
    public static string PinOf(string person) =>
        DemoShop.People.Where(p => p.Id == person).Select(p => p.Pin).FirstOrDefault() ?? Invented.Pin;

    /// <summary>The room's store.</summary>
    public LocalStore Store => _store;

    /// <summary>How lessons went.</summary>
    public DebriefBook Book { get; }

    /// <summary>When the coach speaks in this start, whatever a learner chose; null: as each chose last.</summary>
    public CoachMode? Coach { get; init; }

    /// <summary>True once it was left and the room's lock is free again.</summary>
    public bool IsClosed { get; private set; }

    /// <summary>When the coach speaks to a learner.</summary>
    public CoachMode CoachOf(string person) => Coach ?? Book.Coach.Read(person);

    /// <summary>Opens the room in a folder, made if it isn't there; null with the reason.</summary>
    public static (PracticeDoor? Door, string Fault) Open(string folder, CoachMode? coach)
    {
        if (LessonShelf.All() is not [var first, ..])
        {
            return (null, "No lesson came with the program: procedures/practice beside it is empty or missing.");
        }

        (_, Binding? binding, string fault) = LessonShelf.Bind(first);
        if (binding is null)
        {
            return (null, fault);
        }

        (LocalStore? store, fault) = PracticeRoom.Open(folder, binding.Setup);
        return store is null ? (null, fault) : (new PracticeDoor(store, folder) { Coach = coach }, "");
    }

    /// <summary>The screen to begin with: whoever has learned here before chooses, a newcomer is asked a name.</summary>
    public Screen First()
    {
        Person[] learners =
        [
            .. _store
                .Shop.People.Values.Where(p => p.RetiredAt is null && IsLearner(p))
                .OrderBy(p => p.Name, StringComparer.Ordinal),
        ];
        return learners.Length == 0 ? new LearnerForm(this) : new LearnersScreen(this, learners);
    }

    /// <summary>The lessons, for a learner.</summary>
    public LessonsScreen Lessons(string person) => new LessonsScreen(this, person);

    /// <summary>The learner of a name, made known to the room if need be.</summary>
    public (string Person, string? Fault) Learner(string name)
    {
        string tidy = name.Trim();
        if (_store.Shop.People.Values.FirstOrDefault(p => p.Name == tidy) is { } known)
        {
            return (known.Id, null);
        }

        (string lead, _, _, string pin) = DemoShop.People[0];
        string id = ShopDesk.ProposeId(tidy, _store.Shop);
        string? fault = new ShopDesk(_store, Machine.Entropy, DemoShop.Rounds).AddPerson(
            id,
            tidy,
            Role.Trainee,
            Invented.Pin,
            lead,
            pin
        );
        return (id, fault);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        if (!IsClosed)
        {
            IsClosed = true;
            _store.Dispose();
        }
    }

    // The invented people belong to the room; one of them is a learner once a lesson was taken under the name.
    private bool IsLearner(Person person) =>
        DemoShop.People.All(p => p.Id != person.Id) || Book.Of(person.Id).Count > 0;
}
