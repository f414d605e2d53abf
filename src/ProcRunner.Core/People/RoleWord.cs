namespace ProcRunner.People;

/// <summary>How a role is written in the shop book and in a certificate. The words are part of the format.</summary>
public static class RoleWord
{
    /// <summary>The written word.</summary>
    public static string Of(Role role) =>
        role switch
        {
            Role.Lead => "lead",
            Role.Trainee => "trainee",
            _ => "operator",
        };

    /// <summary>The role of a written word, null when there is none.</summary>
    public static Role? Parse(string? word) =>
        word switch
        {
            "lead" => Role.Lead,
            "trainee" => Role.Trainee,
            "operator" => Role.Operator,
            _ => null,
        };
}
