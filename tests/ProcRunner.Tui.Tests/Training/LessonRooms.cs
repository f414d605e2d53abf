using ProcRunner.Lessons;
using ProcRunner.Store.Local;
using ProcRunner.Testing;
using ProcRunner.Tui.Training;

namespace ProcRunner.Tui.Tests.Training;

/// <summary>Practice rooms of a test, and lessons opened in them.</summary>
public abstract class LessonRooms : IDisposable
{
    private protected const string Learner = "finch";

    private readonly TempFolder _folder = new(inMemory: true);

    private protected TempFolder Folder => _folder;

    public void Dispose()
    {
        _folder.Dispose();
        GC.SuppressFinalize(this);
    }

    private protected DebriefBook Book(string room) => new(_folder[room]);

    private protected LocalStore Room(string name)
    {
        (_, Practice.Bindings.Binding? binding, string fault) = LessonShelf.Bind(LessonShelf.All()[0]);
        Assert.True(binding is not null, fault);
        (LocalStore? store, fault) = PracticeRoom.Open(_folder[name], binding.Setup);
        return store ?? throw new InvalidOperationException(fault);
    }

    private protected LessonRun Open(LocalStore store, string room, string name)
    {
        Lesson lesson = LessonShelf.All().Single(one => one.Name == name);
        (LessonRun? run, string fault) = LessonRun.Open(store, Book(room), lesson, Learner, CoachMode.EachStep);
        return run ?? throw new InvalidOperationException(fault);
    }
}
