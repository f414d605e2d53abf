namespace ProcRunner.Tui.Training;

/// <summary>
/// What is looked at, in each condition that has a picture of its own. What is heard or felt there stands below it; what it
/// is called, nowhere.
/// </summary>
internal static class SightPictures
{
    private const string Sound = "sound";
    private const string Wall = "########";

    private static readonly Dictionary<(string Seen, string Word), string> All = new()
    {
        [("valve neck", Sound)] = Neck("  |   |"),
        [("valve neck", "nicked")] = Neck(" >|   |"),
        [("seat", Sound)] = """
            seat, cut through
            ########\       /########
            ########|\     /|########
            ########| |   | |########
            ########| |   | |########
            #########################
            rings clear, doesn't turn
            """,
        [("seat", "loose")] = """
            seat, cut through
            ########         ########
            ######## \_____/ ########
            ######## |     | ########
            ######## |     | ########
            ########         ########
            it turns under the thumb
            """,
        [("seat", "burnt")] = """
            seat, cut through
            ########\       /########
            ########|\.   _/|########
            ########| '  |  |########
            ########|    |  |########
            #########################
            rings dull, doesn't turn
            """,
        [("seat", "broken")] = """
            seat, cut through
            ########\        ########
            ########|\       ########
            ########| |    _ ########
            ########| |   / |########
            #########################
            a piece isn't there
            """,
        [("deck surface", Sound)] = """
            the deck, light along it
            ////////////////////////
            ////////////////////////
            ////////////////////////
            ////////////////////////
            """,
        [("deck surface", "old")] = """
            the deck, light along it
            ////////////////////////
            ////////////..:.////////
            ///////////.:::..///////
            ////////////////////////
            """,
        [("powder", Sound)] = """
            powder on, the magnet on
               .---.     .---.
              /     \   /     \
             |   I   | |   E   |
              \     /   \     /
               '---'     '---'
            wiped, dusted, blown off
            """,
        [("powder", "cracked")] = """
            powder on, the magnet on
               .---.     .---.
              /     \:  /     \
             |   I   |::|  E   |
              \     /  :\     /
               '---'     '---'
            wiped, dusted, blown off
            """,
        [("bubbles", Sound)] = """
            under water, air inside
            ~~~~~~~~~~~~~~~~~~~~~~~

              ___________________
             |                   |
             |  ( )  ( )   ( )   |
             |___________________|
            as long as the rule says
            """,
        [("bubbles", "cracked")] = """
            under water, air inside
            ~~~~~~~~~~~~~O~~~~~~~~~
                        .  o
              ___________o_______
             |           .       |
             |  ( )  ( )   ( )   |
             |___________________|
            as long as the rule says
            """,
        [("threads", Sound)] = Thread("########>     <########", "a bolt runs in by hand"),
        [("threads", "stripped")] = Thread("########|  '  |########", "a bolt wobbles in it"),
        [("manifold faces", Sound)] = Face("#########################", "#########################"),
        [("manifold faces", "warped")] = Face("#####...............#####", "#########################"),
        [("manifold faces", "cracked")] = Face(@"##########\##############", @"###########\#############"),
        [("locks", Sound)] = Lock("|=========|"),
        [("locks", "worn")] = Lock("|==     ==|"),
        [("pre-chamber insert", Sound)] = PreChamber("|    ( )    |", @" \         /"),
        [("pre-chamber insert", "cracked")] = PreChamber("|    ( )__  |", @" \       \_/"),
        [("counterbore", Sound)] = Bore("########           ########"),
        [("counterbore", "torn")] = Bore("#######'           ########"),
        [("passages", Sound)] = Passage("                  *"),
        [("passages", "chips")] = Passage("        .,:;.     *"),
    };

    /// <summary>The picture; empty where there is none.</summary>
    /// <param name="seen">What is looked at.</param>
    /// <param name="word">Its condition.</param>
    public static IReadOnlyList<string> Of(string seen, string word) =>
        All.TryGetValue((seen, word), out string? picture) ? picture.ReplaceLineEndings("\n").Split('\n') : [];

    private static string Neck(string nick) =>
        $$"""
            the neck under the glass
              |   |
              |   |
            {{nick}}
              |   |
              /   \
            _/     \_
            \_______/
            """;

    private static string Thread(string middle, string felt) =>
        $"""
            a hole, cut through
            {Wall}>     <{Wall}
            {Wall}>     <{Wall}
            {middle}
            {middle}
            {Wall}>     <{Wall}
            {felt}
            """;

    private static string Face(string upper, string lower) =>
        $"""
            an edge on it, lamp behind
            =========================
            {upper}
            {lower}
            #########################
            """;

    private static string Lock(string ridge) =>
        $"""
            a lock, its inner side
             .-------.
            /         \
            |         |
            {ridge}
            |         |
            '---------'
            the ridge holds the stem
            """;

    private static string PreChamber(string throat, string below) =>
        $"""
            pre-chamber, from below
              .-------.
             /         \
            {throat}
            {below}
              '-------'
            """;

    private static string Bore(string wall) =>
        $"""
            the bore, a lamp in it
            ########           ########
            {wall}
            ########           ########
            ########___________########
            ###########################
            """;

    private static string Passage(string light) =>
        $"""
            an oil way, a lamp behind
            #########################
            {light}
            #########################
            """;
}
