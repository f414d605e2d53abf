using System.Diagnostics;
using System.Security.Cryptography;
using System.Text;
using ProcRunner.People;

namespace ProcRunner.Tests.People;

public sealed class PersonKeysTests
{
    private const int FewRounds = 10;

    private static Person Root { get; } = Make("lead1", Role.Lead, "123456", null);

    [Theory]
    // RFC 7914, section 11: PBKDF2-HMAC-SHA-256.
    [InlineData(
        "passwd",
        "salt",
        1,
        "55ac046e56e3089fec1691c22544b605f94185216dde0465e68b9d57c20dacbc49ca9cccf179b645991664b39d77ef317c71b845b1e30bd509112041d3a19783"
    )]
    [InlineData(
        "Password",
        "NaCl",
        80000,
        "4ddcd8f60b98be21830cee5ef22701f9641a4418d04c0414aeff08876b34ab56a1d425a1225833549adb841b51c9b3176a272bdebba1d078478f62b397f33c8d"
    )]
    public void What_is_called_is_PBKDF2_HMAC_SHA_256(string pin, string salt, int rounds, string expected) =>
        Assert.Equal(
            expected,
            Convert.ToHexStringLower(
                Rfc2898DeriveBytes.Pbkdf2(pin, Encoding.ASCII.GetBytes(salt), rounds, HashAlgorithmName.SHA256, 64)
            )
        );

    // A vector in common use beside those of RFC 7914: 4096 rounds, 32 bytes.
    [Fact]
    public void A_key_of_32_bytes() =>
        Assert.Equal(
            "c5e478d59288c841aa530db6845c4c8d962893a001ce4e11a4963873aa98134a",
            Convert.ToHexStringLower(
                Rfc2898DeriveBytes.Pbkdf2("password", "salt"u8.ToArray(), 4096, HashAlgorithmName.SHA256, 32)
            )
        );

    [Fact]
    public void Signs_with_the_PIN_and_not_without()
    {
        var made = Assert.IsType<SigningResult.Made>(PersonKeys.TrySign(Root, "123456", "bytes"u8));

        Assert.True(PersonKeys.Verify(Root, "bytes"u8, made.Signature.AsSpan()));
        Assert.False(PersonKeys.Verify(Root, "bytez"u8, made.Signature.AsSpan()));
        Assert.False(PersonKeys.Verify(Root, "bytes"u8, made.Signature.AsSpan()[1..]));
        Assert.False(PersonKeys.Verify(Root with { PublicKey = "rubbish" }, "bytes"u8, made.Signature.AsSpan()));
        Assert.IsType<SigningResult.WrongPin>(PersonKeys.TrySign(Root, "123457", "bytes"u8));
        Assert.IsType<SigningResult.WrongPin>(PersonKeys.TrySign(Root, "", "bytes"u8));
    }

    [Fact]
    public void A_wrapped_key_opens_for_its_own_person_only()
    {
        Person other = Root with { Id = "p9" };

        Assert.IsType<SigningResult.WrongPin>(PersonKeys.TrySign(other, "123456", "bytes"u8));
        Assert.IsType<SigningResult.WrongPin>(
            PersonKeys.TrySign(
                Root with
                {
                    WrappedKey = Root.WrappedKey with { Rounds = int.MaxValue },
                },
                "123456",
                "bytes"u8
            )
        );
        Assert.IsType<SigningResult.WrongPin>(
            PersonKeys.TrySign(Root with { WrappedKey = Root.WrappedKey with { Sealed = "AA==" } }, "123456", "bytes"u8)
        );
    }

    [Theory]
    [InlineData(Role.Operator, "123", PinFault.UnderFour)]
    [InlineData(Role.Operator, "", PinFault.UnderFour)]
    [InlineData(Role.Operator, "12a4", PinFault.NotDigits)]
    [InlineData(Role.Trainee, "١٢٣٤", PinFault.NotDigits)]
    [InlineData(Role.Lead, "12345", PinFault.LeadUnderSix)]
    [InlineData(Role.Lead, "00000000001111111111222222222233333333334444444444555555555566666", PinFault.TooLong)]
    public void Refuses_a_PIN_that_is_too_weak(Role role, string pin, PinFault fault)
    {
        var bad = Assert.IsType<PersonMaking.BadPin>(
            PersonKeys.Create("x", "X", role, pin, FewRounds, RandomNumberGenerator.Fill, new(Root, "123456"))
        );

        Assert.Equal(fault, bad.Fault);
        Assert.NotEmpty(PinRule.InWords(fault));
    }

    [Fact]
    public void A_lead_certifies_the_others()
    {
        Person person = Make("p1", Role.Operator, "1234", new(Root, "123456"));

        Assert.True(PersonKeys.IsCertified(Root, Root));
        Assert.True(PersonKeys.IsCertified(person, Root));
        Assert.False(PersonKeys.IsCertified(person with { Role = Role.Lead }, Root));
        Assert.False(PersonKeys.IsCertified(person with { Name = "Another" }, Root));
        Assert.False(PersonKeys.IsCertified(person with { Certificate = "rubbish" }, Root));
        Assert.IsType<PersonMaking.WrongPin>(Try("p2", Role.Operator, "1234", new(Root, "000000")));
        Assert.IsType<PersonMaking.NotALead>(Try("p2", Role.Operator, "1234", new(person, "1234")));
        Assert.IsType<PersonMaking.NotALead>(Try("p2", Role.Operator, "1234", null));
        Assert.IsType<PersonMaking.NotALead>(
            Try("p2", Role.Operator, "1234", new(Root with { RetiredAt = DateTimeOffset.UnixEpoch }, "123456"))
        );
        Assert.IsType<PersonMaking.BadName>(Try("p\u001b", Role.Operator, "1234", new(Root, "123456")));
        Assert.IsType<PersonMaking.BadName>(Try(" ", Role.Operator, "1234", new(Root, "123456")));
    }

    [Fact]
    public void A_trainee_becomes_an_operator_with_the_same_key()
    {
        Person trainee = Make("p1", Role.Trainee, "1234", new(Root, "123456"));
        using UnlockedKey lead = PersonKeys.TryUnlock(Root, "123456")!;
        var made = Assert.IsType<PersonMaking.Made>(PersonKeys.Recertify(trainee, trainee.Name, Role.Operator, lead));

        Assert.Equal((Role.Operator, trainee.PublicKey), (made.Person.Role, made.Person.PublicKey));
        Assert.True(PersonKeys.IsCertified(made.Person, Root));
        Assert.IsType<SigningResult.Made>(PersonKeys.TrySign(made.Person, "1234", "x"u8));
        using UnlockedKey own = PersonKeys.TryUnlock(trainee, "1234")!;
        Assert.IsType<PersonMaking.NotALead>(PersonKeys.Recertify(trainee, "X", Role.Operator, own));
        Assert.IsType<PersonMaking.NotALead>(PersonKeys.Recertify(Root, "X", Role.Lead, lead));
        Assert.IsType<PersonMaking.BadName>(PersonKeys.Recertify(trainee, " ", Role.Operator, lead));
    }

    [Fact]
    public void A_changed_PIN_keeps_the_key()
    {
        using UnlockedKey key = PersonKeys.TryUnlock(Root, "123456")!;
        Person changed = Root with
        {
            WrappedKey = PersonKeys.Rewrap(key, "654321", FewRounds, RandomNumberGenerator.Fill),
        };

        Assert.IsType<SigningResult.WrongPin>(PersonKeys.TrySign(changed, "123456", "x"u8));
        Assert.IsType<SigningResult.Made>(PersonKeys.TrySign(changed, "654321", "x"u8));
        Assert.Null(PersonKeys.TryUnlock(Root, "111111"));
        Assert.Throws<ArgumentException>(() => PersonKeys.Rewrap(key, "6543", FewRounds, RandomNumberGenerator.Fill));
    }

    [Fact]
    public void A_reset_PIN_has_a_new_key_certified_by_the_lead()
    {
        Person person = Make("p1", Role.Operator, "1234", new(Root, "123456"));
        using UnlockedKey lead = PersonKeys.TryUnlock(Root, "123456")!;
        Person reset = PersonKeys.Reset(person, "9876", FewRounds, RandomNumberGenerator.Fill, lead);

        Assert.NotEqual(person.PublicKey, reset.PublicKey);
        Assert.Equal((person.Id, person.Name, person.Role), (reset.Id, reset.Name, reset.Role));
        Assert.True(PersonKeys.IsCertified(reset, Root));
        Assert.IsType<SigningResult.Made>(PersonKeys.TrySign(reset, "9876", "x"u8));
        Assert.IsType<SigningResult.WrongPin>(PersonKeys.TrySign(reset, "1234", "x"u8));
        Assert.Throws<ArgumentException>(() =>
            PersonKeys.Reset(person, "987", FewRounds, RandomNumberGenerator.Fill, lead)
        );
    }

    // The referee is the openssl program.
    [Fact]
    public void Openssl_checks_the_signature_and_gives_the_same_fingerprint()
    {
        string folder = Directory.CreateTempSubdirectory("procrunner-").FullName;
        try
        {
            byte[] data = Encoding.UTF8.GetBytes("recession 1I 0.0520 in\n");
            var made = (SigningResult.Made)PersonKeys.TrySign(Root, "123456", data);
            File.WriteAllBytes(Path.Combine(folder, "data"), data);
            File.WriteAllBytes(Path.Combine(folder, "sig"), [.. made.Signature]);
            File.WriteAllText(
                Path.Combine(folder, "key.pem"),
                $"-----BEGIN PUBLIC KEY-----\n{Root.PublicKey}\n-----END PUBLIC KEY-----\n"
            );

            Assert.Equal("Verified OK", OpenSsl(folder, "dgst -sha256 -verify key.pem -signature sig data"));
            File.AppendAllText(Path.Combine(folder, "data"), "x");
            Assert.Contains(
                "Verification failure",
                OpenSsl(folder, "dgst -sha256 -verify key.pem -signature sig data"),
                StringComparison.OrdinalIgnoreCase
            );

            OpenSsl(folder, "pkey -pubin -in key.pem -outform DER -out key.der");
            string digest = OpenSsl(folder, "dgst -sha256 -r key.der")[..64];
            Assert.Equal(digest, PersonKeys.Fingerprint(Root).Replace(" ", "", StringComparison.Ordinal));
            Assert.Contains(
                "prime256v1",
                OpenSsl(folder, "pkey -pubin -in key.pem -text -noout"),
                StringComparison.Ordinal
            );
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    // The other way round: a key that openssl made and what it signed with it.
    [Fact]
    public void The_program_checks_what_openssl_signed()
    {
        string folder = Directory.CreateTempSubdirectory("procrunner-").FullName;
        try
        {
            byte[] data = Encoding.UTF8.GetBytes("recession 1I 0.0520 in\n");
            File.WriteAllBytes(Path.Combine(folder, "data"), data);
            OpenSsl(folder, "ecparam -name prime256v1 -genkey -noout -out key.pem");
            OpenSsl(folder, "pkey -in key.pem -pubout -outform DER -out key.der");
            OpenSsl(folder, "dgst -sha256 -sign key.pem -out sig data");
            byte[] signature = File.ReadAllBytes(Path.Combine(folder, "sig"));
            string key = Convert.ToBase64String(File.ReadAllBytes(Path.Combine(folder, "key.der")));
            Person person = Root with { PublicKey = key };

            Assert.True(PersonKeys.Verify(person, data, signature));
            Assert.False(PersonKeys.Verify(person, data.AsSpan(1), signature));
            Assert.False(PersonKeys.Verify(Root, data, signature));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static PersonMaking Try(string id, Role role, string pin, Certifier? certifier) =>
        PersonKeys.Create(id, "Name of " + id, role, pin, FewRounds, RandomNumberGenerator.Fill, certifier);

    private static Person Make(string id, Role role, string pin, Certifier? certifier) =>
        ((PersonMaking.Made)Try(id, role, pin, certifier)).Person;

    private static string OpenSsl(string folder, string arguments)
    {
        using var process = Process.Start(
            new ProcessStartInfo("openssl", arguments)
            {
                UseShellExecute = false,
                WorkingDirectory = folder,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            }
        )!;
        string text = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return text.Trim();
    }
}
