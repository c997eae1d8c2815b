using StatueFrame.Checks;
using UnitsNet;

namespace StatueFrame.Tests.Actions.Combinations;

public class CombinationTests
{
    private static readonly SelfWeight weight = new();
    private static readonly WindAction wind = Stages.Wind(0, 90);
    private static readonly ImposedLoad visitors = new() { Name = "visitors", On = "L3", Down = 20.Kilonewtons };
    private static readonly IceAction ice = new() { Class = IceClass.Glaze(3) };
    private static readonly TemperatureAction summer = new() { Name = "summer", SkinChange = TemperatureDelta.FromKelvins(30) };
    private static readonly TemperatureAction winter = new() { Name = "winter", SkinChange = TemperatureDelta.FromKelvins(-30) };
    private static readonly EarthquakeAction earthquake = new() { Horizontal = new En1998Spectrum { ReferenceAcceleration = 1.MetersPerSecondSquared, Ground = GroundType.B, BehaviorFactor = 1.5 } };
    private static readonly PressurePulse blow = new() { Name = "blow", Shape = new TrianglePulse(), Peak = 1.Kilopascals, Duration = 0.02.Seconds, Heading = 0.Degrees, WaveSpeed = 340.MetersPerSecond };
    private static readonly WindAction asceWind = wind with { Profile = new AsceWind { Edition = AsceEdition.Asce7_22, BasicSpeed = 50.MetersPerSecond, Exposure = AsceExposure.C } };
    private static readonly EurocodeBasis pair = new() { Rule = En1990Rule.Pair };
    private static readonly AsceBasis allowable = new() { Method = AsceMethod.Allowable };

    private static CharacteristicActions Acting(params ValueList<VariableAction> variable) => new() { Variable = variable };

    private static double Factor(ValueList<Situation> set, string name, StatueAction action)
    {
        Situation situation = set.Single(s => s.Name == name);
        return situation.Actions.Where(a => a.Action.Equals(action)).Sum(a => a.Factor);
    }

    private static double Strength(string name, StatueAction action) => Factor(pair.Combine(Acting(wind, visitors, ice)), name, action);

    private static double All(string name, StatueAction action) => Factor(new EurocodeBasis().Combine(Acting(wind, visitors)), name, action);

    private static double Lrfd(string name, StatueAction action, params ValueList<VariableAction> variable) =>
        Factor(new AsceBasis().Combine(Acting(variable) with { Seismic = [earthquake], Accidental = [blow] }), $"strength design {name}", action);

    public static IEnumerable<PublishedValue> Rows =>
    [
        Row("weight, unfavorable", "6.10, Table A1.2(B)", 1.35, () => All("6.10, wind leading with visitors", weight)),
        Row("weight, favorable", "6.10, Table A1.2(B)", 1.0, () => All("6.10, wind leading, weight favorable", weight)),
        Row("leading wind", "6.10, Table A1.2(B)", 1.5, () => All("6.10, wind leading, weight favorable", wind), ValueKind.FromMemory),
        Row("accompanying wind, 1.5 ψ₀", "6.10, Tables A1.1, A1.2(B)", 0.9, () => All("6.10, visitors leading with wind", wind), ValueKind.FromMemory),
        Row("accompanying visitors, 1.5 ψ₀", "6.10, Tables A1.1, A1.2(B)", 1.05, () => All("6.10, wind leading with visitors", visitors), ValueKind.FromMemory),
        Row("leading wind in (6.10a), 1.5 ψ₀", "6.10a", 0.9, () => Strength("6.10a, wind leading with visitors", wind), ValueKind.FromMemory),
        Row("weight in (6.10b), ξ 1.35", "6.10b", 1.1475, () => Strength("6.10b, wind leading with visitors", weight), ValueKind.FromMemory),
        Row("wind, frequent", "Table A1.1", 0.2, () => All("frequent, wind leading with visitors", wind), ValueKind.FromMemory),
        Row("visitors, quasi-permanent", "Table A1.1", 0.6, () => All("quasi-permanent", visitors), ValueKind.FromMemory),
        Row("wind with ice G3, 1.5 × 0.5", "6.10 with k of ISO 12494, 9.2", 0.75, () => Strength("6.10b, wind leading with ice G3, visitors", wind), ValueKind.FromMemory),
        new("c_prob of 100 years, on speed", "EN 1991-1-4:2005+A1:2010, 4.2 (4.2), by hand", 1.038477, "-", 1e-6, () => new EurocodeBasis { WindReturnPeriod = 100 }.ProbabilityFactor, ValueKind.IndependentComputation),
        new("c_prob of 10 years, on speed", "EN 1991-1-4:2005+A1:2010, 4.2 (4.2), by hand", 0.902480, "-", 1e-6, () => new EurocodeBasis { WindReturnPeriod = 10 }.ProbabilityFactor, ValueKind.IndependentComputation),
        new("pressure of 50 years over that of 700", "ASCE/SEI 7-10, C2.3.2: wind load factor 1.6 of earlier editions", 1 / 1.6, "-", 5e-3, () => new AsceBasis { ServiceReturnPeriod = 50 }.ServiceFactor, ValueKind.FromMemory),
        new("1.2D + W + L: weight", "ASCE/SEI 7-22, 2.3.1", 1.2, "-", 1e-12, () => Lrfd("1.2D + W + L", weight, asceWind, visitors), ValueKind.FromMemory),
        new("1.2D + E + L: earthquake", "ASCE/SEI 7-22, 2.3.6", 1.0, "-", 1e-12, () => Lrfd("1.2D + E + L", earthquake, asceWind, visitors), ValueKind.FromMemory),
        new("1.2D + A + 0.5L: people", "ASCE/SEI 7-22, 2.5.2", 0.5, "-", 1e-12, () => Lrfd("1.2D + A + 0.5L", visitors, asceWind, visitors), ValueKind.FromMemory),
        new("1.2D + 1.2T: heat", "ASCE/SEI 7-22, 2.3.4 with its commentary", 1.2, "-", 1e-12, () => Lrfd("1.2D + 1.2T", summer, asceWind, summer), ValueKind.FromMemory),
        new("0.6D + 0.6W: wind", "ASCE/SEI 7-22, 2.4.1", 0.6, "-", 1e-12, () => Factor(allowable.Combine(Acting(asceWind)), "allowable stress 0.6D + 0.6W", asceWind), ValueKind.FromMemory),
        new("D + 0.75L + 0.75(0.6W): wind", "ASCE/SEI 7-22, 2.4.1", 0.45, "-", 1e-12, () => Factor(allowable.Combine(Acting(asceWind, visitors)), "allowable stress D + 0.45W + 0.75L", asceWind), ValueKind.FromMemory),
    ];

    private static PublishedValue Row(string feature, string place, double expected, Func<double> compute, ValueKind kind = ValueKind.Published) =>
        new($"factor on {feature}", $"EN 1990:2002+A1:2005, {place}", expected, "-", 1e-12, compute, kind);

    [Fact]
    public void Names_are_unique_and_every_situation_says_what_it_rests_on()
    {
        CharacteristicActions many = Acting(wind, visitors, ice, summer, winter) with { Seismic = [earthquake], Accidental = [blow] };
        CharacteristicActions american = Acting(asceWind, visitors, summer, winter) with { Seismic = [earthquake], Accidental = [blow] };
        ValueList<Situation>[] sets = [new EurocodeBasis().Combine(many), pair.Combine(many), new AsceBasis().Combine(american), allowable.Combine(american)];
        foreach (ValueList<Situation> set in sets)
        {
            Assert.Equal(set.Count, set.Select(s => s.Name).Distinct().Count());
            Assert.Equal(set.Count, set.Select(s => (s.LimitState, s.Actions)).Distinct().Count());
            Assert.All(set, s => Assert.NotEmpty(s.Factors));
            Assert.All(set, s => Assert.DoesNotContain(s.Actions, a => a.Factor == 0));
            Assert.All(set, s => Assert.Contains(s.Actions, a => a.Action is SelfWeight));
            Assert.All(set, s => Assert.True(s.Actions.Count(a => a.Action is TemperatureAction) <= 1));
            Assert.Contains(set, s => s.Actions.Any(a => a.Action is EarthquakeAction));
            Assert.Contains(set, s => s.HasShock);
            Assert.Contains(set, s => s.LimitState == LimitState.Service && s.Wind is not null);
        }
    }

    /// <summary>Heat leads and accompanies, in either direction, and wind blows with each and with none.</summary>
    [Fact]
    public void Every_choice_of_heat_stands_beside_the_wind()
    {
        ValueList<Situation> set = new EurocodeBasis().Combine(Acting(wind, summer, winter));
        foreach (TemperatureAction? heat in new[] { null, summer, winter })
        {
            Assert.Contains(set, s => s is { LimitState: LimitState.Strength, Wind.Factor: 1.5 } && Heat(s) == (heat, heat is null ? 0 : 1.5 * 0.6));
            if (heat is not null)
                Assert.Contains(set, s => s.LimitState == LimitState.Strength && s.Wind is not null && Heat(s) == (heat, 1.5) && Math.Abs(s.Wind.Factor - 0.9) < 1e-12);
        }

        static (StatueAction?, double) Heat(Situation s) => s.Actions.FirstOrDefault(a => a.Action is TemperatureAction) is { } heat ? (heat.Action, heat.Factor) : (null, 0);
    }

    [Fact]
    public void With_wind_alone_there_are_few()
    {
        Assert.Equal(
            ["6.10, permanent alone", "6.10, wind leading", "characteristic, wind leading", "frequent, wind leading", "quasi-permanent"],
            new EurocodeBasis().Combine(Acting(wind)).Select(s => s.Name));
        Assert.Equal(
            ["strength design 1.4D", "strength design 1.2D + W", "strength design 0.9D + W", "service D", "service D + 0.441W"],
            new AsceBasis().Combine(Acting(asceWind)).Select(s => s.Name));
    }

    [Fact]
    public void Winds_of_one_name_are_told_apart()
    {
        ValueList<Situation> set = new EurocodeBasis().Combine(Acting(wind, Stages.Wind(45)));
        Assert.Contains(set, s => s.Name == "6.10, wind 1 leading");
        Assert.Contains(set, s => s.Name == "6.10, wind 2 leading");
        Assert.All(set, s => Assert.True(s.Actions.Count(a => a.Action is WindAction) <= 1));
    }

    [Fact]
    public void What_holds_the_statue_is_left_out_where_its_weight_is_favorable()
    {
        Assert.Equal(0, All("6.10, wind leading, weight favorable", visitors));
        ImposedLoad pull = visitors with { Name = "pull", AlongX = 5.Kilonewtons };
        ValueList<Situation> set = new EurocodeBasis().Combine(Acting(wind, pull));
        Assert.DoesNotContain(set, s => s.Name.Contains("favorable", StringComparison.Ordinal));
        Assert.Equal(1.05, Factor(set, "6.10, wind leading with pull", pull), 1e-12);
    }

    [Fact]
    public void Wind_is_lessened_by_ice_only_where_ice_counts()
    {
        VariableAction strong = new(wind, VariableKind.Wind) { Psi = new PsiFactors(0.6, 0.2, 0.1, Source.User) };
        ValueList<Situation> set = new EurocodeBasis().Combine(Acting(strong, visitors, ice));
        Assert.Equal(0.1, Factor(set, "quasi-permanent", wind), 1e-12);
        Assert.All(set.Where(s => s.Name.Contains("with ice", StringComparison.Ordinal)), s => Assert.Contains(s.Actions, a => a.Action is IceAction));
        Assert.Equal(0.5, Factor(set, "characteristic, wind leading with ice G3, visitors", wind), 1e-12);
    }

    /// <summary>Alternatives that count as lasting stand in situations of their own, in an earthquake too; where no wind can be, the sheet says so.</summary>
    [Fact]
    public void Every_lasting_alternative_is_taken()
    {
        var lasting = new PsiFactors(0.6, 0.5, 0.2, Source.User);
        VariableAction Lasting(StatueAction action, VariableKind kind) => new(action, kind) { Psi = lasting };
        CharacteristicActions acting = Acting(Lasting(summer, VariableKind.Temperature), Lasting(winter, VariableKind.Temperature), Lasting(wind, VariableKind.Wind), visitors) with { Seismic = [earthquake], Accidental = [blow] };
        ValueList<Situation> set = new EurocodeBasis().Combine(acting);
        foreach (string name in new[] { "summer", "winter" })
        {
            foreach (string rare in new[] { "quasi-permanent", "seismic, earthquake", "accidental, blow" })
            {
                Situation situation = set.Single(s => s.Name == $"{rare} with {name}");
                Assert.Contains(situation.Actions, a => a.Action.Title == name && a.Factor == 0.2);
                Assert.Equal(rare.StartsWith("accidental", StringComparison.Ordinal), situation.Wind is null);
            }
        }
        Assert.All(set.Where(s => s.HasShock), s => Assert.Contains(s.Factors, f => f.Value == "at ψ₂, and no wind"));
    }

    /// <summary>A class that nobody gave decides factors: the rows say so, and no longer once it is given or factors are written by hand.</summary>
    [Fact]
    public void Rows_rest_on_the_class_that_was_taken()
    {
        bool Rests(CheckSheet sheet, string subject) => sheet.Checks.Any(c => c.AssumedInputs.Any(input => input.StartsWith(subject, StringComparison.Ordinal)));
        var given = new Criteria { Basis = new EurocodeBasis { Consequences = ConsequenceClass.CC2, WindReturnPeriod = 50, Execution = ExecutionClass.EXC3 } };
        CheckSheet taken = Stages.Bare.Check(new Criteria(), Acting(wind)), chosen = Stages.Bare.Check(given, Acting(wind));
        CheckSheet byHand = Stages.Bare.Check(new Criteria(), new Situation { Name = "storm", Actions = [1.35 * weight, 1.5 * wind] });
        foreach (string subject in new[] { "consequence class", "return period of the wind" })
        {
            Assert.True(Rests(taken, subject));
            Assert.False(Rests(chosen, subject));
            Assert.False(Rests(byHand, subject));
        }
        Assert.Contains(byHand.Basis, line => line.Value == "Eurocodes, recommended values; factors on actions as written by hand");
        CheckSheet american = Stages.Bare.Check(new Criteria { Basis = new AsceBasis() }, Acting(asceWind));
        Assert.True(Rests(american, "risk category") && Rests(american, "return period of the wind in service"));
    }

    [Fact]
    public void The_state_of_the_whole_is_no_part_and_a_part_may_have_its_name()
    {
        Assert.Equal("", Of("wind towards 22.5°, weights times 0.9"));
        Assert.Equal("", Of("vortices in mode 3, one way"));
        Assert.Equal("", Of("earthquake towards 45°, pressed"));
        Assert.Equal("leg 1", Of("leg 1, wind towards 45°"));
        Assert.Equal("weights/band 1", Of("weights/band 1, bar 2"));
        Assert.Equal("earthquake–L2", Of("earthquake–L2, bottom, no wind"));

        static string Of(string where) => new CheckSubject("a.b", "t", where).Part;
    }

    [Fact]
    public void The_consequence_class_raises_only_what_is_unfavorable()
    {
        ValueList<Situation> set = new EurocodeBasis { Consequences = ConsequenceClass.CC3 }.Combine(Acting(wind, visitors));
        Assert.Equal(1.1 * 1.5, Factor(set, "6.10, wind leading, weight favorable", wind), 1e-12);
        Assert.Equal(1.1 * 1.35, Factor(set, "6.10, wind leading with visitors", weight), 1e-12);
        Assert.Equal(1, Factor(set, "6.10, wind leading, weight favorable", weight), 1e-12);
        Assert.Equal(1, Factor(set, "characteristic, wind leading with visitors", wind), 1e-12);
    }

    [Fact]
    public void A_rarer_wind_presses_harder_in_every_situation()
    {
        CharacteristicActions acting = Acting(wind, summer);
        ValueList<Situation> usual = new EurocodeBasis().Combine(acting), rare = new EurocodeBasis { WindReturnPeriod = 200 }.Combine(acting);
        double c = new EurocodeBasis { WindReturnPeriod = 200 }.ProbabilityFactor;
        Assert.All(usual.Zip(rare), pair =>
        {
            Assert.Equal(pair.First.Name, pair.Second.Name);
            Assert.Equal(c * c * (pair.First.Wind?.Factor ?? 0), pair.Second.Wind?.Factor ?? 0, 1e-12);
        });
    }

    /// <summary>The sheet by actions is the sheet by the situations that the basis makes of them, and says its basis.</summary>
    [Fact]
    public void Actions_can_be_checked()
    {
        var criteria = new Criteria { Basis = new EurocodeBasis { Consequences = ConsequenceClass.CC3, WindReturnPeriod = 100 } };
        CharacteristicActions acting = Acting(wind, visitors);
        CheckSheet sheet = Stages.Bare.Check(criteria, acting);
        Assert.Equal(Stages.Bare.Check(criteria, [.. criteria.Basis.Combine(acting)]).ToStableText(), sheet.ToStableText());
        Assert.Contains(sheet.Assumptions, a => a.Subject.Contains("6.10, wind leading, weight favorable", StringComparison.Ordinal));
        Assert.Contains(sheet.Assumptions, a => a.Subject == "ψ₀, ψ₁, ψ₂ of wind");
        Assert.Contains(sheet.Basis, line => line is { Name: "codes" } && line.Value.Contains("CC3 (K_FI 1.1), wind of 100 years", StringComparison.Ordinal));
        Assert.Equal(sheet.ToStableText(), new StatueDocument { Statue = Stages.Bare, Criteria = criteria, Actions = acting }.Check().ToStableText());
    }

    [Fact]
    public void A_basis_chooses_the_codes_of_resistances()
    {
        var american = new Criteria { Basis = new AsceBasis() };
        Assert.Equal((DesignCode.AiscLrfd, DesignCode.AiscLrfd, BaseCode.American), (american.BarCodeInUse, american.TowerCodeInUse, american.BaseInUse.Code));
        Assert.Equal(DesignCode.AiscAsd, new Criteria { Basis = allowable }.TowerCodeInUse);
        Assert.Equal(DesignCode.En1993, (american with { BarCode = DesignCode.En1993 }).BarCodeInUse);
    }

    /// <summary>Each with its path and a hint, all at once.</summary>
    [Fact]
    public void What_cannot_be_combined_is_refused()
    {
        Refused(new EurocodeBasis(), new() { Permanent = [] }, "CharacteristicActions.Permanent");
        Refused(new EurocodeBasis(), new() { Permanent = [weight, wind] }, "CharacteristicActions.Permanent[1]");
        Refused(new EurocodeBasis(), Acting(visitors, asceWind), "CharacteristicActions.Variable[1].Action");
        Refused(new AsceBasis(), Acting(wind), "CharacteristicActions.Variable[0].Action");
        Refused(new AsceBasis(), Acting(ice), "CharacteristicActions.Variable[0].Action");
        Refused(new EurocodeBasis(), Acting(new VariableAction(wind, VariableKind.People)), "CharacteristicActions.Variable[0].Kind");
        Refused(new EurocodeBasis(), Acting(new VariableAction(visitors, VariableKind.Wind)), "CharacteristicActions.Variable[0].Kind");
        Refused(new EurocodeBasis(), Acting(new VariableAction(earthquake, VariableKind.Wind)), "CharacteristicActions.Variable[0].Action");
        Refused(new EurocodeBasis(), Acting(new VariableAction(wind, VariableKind.Wind) { Psi = new PsiFactors(2, 0, 0, Source.User) }), "CharacteristicActions.Variable[0].Psi.Combination");
        Refused(new EurocodeBasis { Factors = new En1990Factors { Variable = double.NaN } }, Acting(wind), "DesignBasis.Factors.Variable");
        Refused(new EurocodeBasis { Rule = (En1990Rule)7 }, Acting(wind), "DesignBasis.Rule");
        Refused(new EurocodeBasis { WindReturnPeriod = 1 }, Acting(wind), "DesignBasis.WindReturnPeriod");
        Refused(new AsceBasis { ServiceReturnPeriod = double.NaN }, Acting(asceWind), "DesignBasis.ServiceReturnPeriod");
        Refused(new EurocodeBasis { WindReturnPeriod = 100 }, Acting(wind with { Profile = new TableWind { SpeedIs = WindSpeedBasis.MeanSpeed, Rows = [new WindTableRow(0.Meters, 20.MetersPerSecond, 0.2), new WindTableRow(20.Meters, 30.MetersPerSecond, 0.15)] } }), "CharacteristicActions.Variable[0].Action");
        ValueList<VariableAction> many = [.. Enumerable.Range(0, 40).Select(i => (VariableAction)Stages.Wind(i)), .. Enumerable.Range(0, 40).Select(i => (VariableAction)(summer with { SkinChange = TemperatureDelta.FromKelvins(i) }))];
        Refused(new EurocodeBasis(), Acting(many), "CharacteristicActions.Variable");

        static void Refused(DesignBasis basis, CharacteristicActions actions, string path)
        {
            InvalidStatueException e = Assert.Throws<InvalidStatueException>(() => basis.Combine(actions));
            Assert.Contains(e.Problems, p => p.Path == path && p.Hint.Length > 0);
            Assert.Throws<InvalidStatueException>(() => Stages.Bare.Check(new Criteria { Basis = basis }, actions));
        }
    }
}
