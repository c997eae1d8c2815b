namespace StatueFrame.Checks;

/// <summary>
/// One question with its answer: is this capacity enough for this demand? A check has a verdict, and its
/// <see cref="Working"/> can be shown at any time.
/// </summary>
/// <remarks>
/// A check is made by <see cref="Of"/> or <see cref="NotChecked"/> only, so that its verdict always follows from its
/// numbers. Immutable and safe to share between threads. Two checks are equal when they say the same; how they were
/// computed does not count.
/// </remarks>
public sealed record Check
{
    private Calculation? calculation;
    private Failure? failure;

    private Check(CheckSubject subject, Dimension dimension, Source source, Calculation? calculation)
    {
        Subject = subject;
        Dimension = dimension;
        Source = source;
        this.calculation = calculation;
    }

    /// <summary>What is checked, and where.</summary>
    public CheckSubject Subject { get; private init; }

    /// <summary>The kind of check, as in "bars.bending".</summary>
    public string Id => Subject.Id;

    /// <summary>What kind of question it answers, by the catalogue; strength for checks that a user makes.</summary>
    public Nature Nature => Catalogue.NatureOf(Id);

    /// <summary>The family of checks, as in "bars".</summary>
    public string Family => Subject.Family;

    /// <summary>The kind of check in words.</summary>
    public string Title => Subject.Title;

    /// <summary>The level, band or bar; empty for the whole statue.</summary>
    public string Where => Subject.Where;

    /// <summary>The name of the situation; empty for all.</summary>
    public string Situation => Subject.Situation;

    /// <summary>What the actions ask for, in SI units, zero or more; null when it is not known.</summary>
    public double? Demand { get; private init; }

    /// <summary>What the part can give, in SI units; null when it is not known.</summary>
    public double? Capacity { get; private init; }

    /// <summary>What demand and capacity measure.</summary>
    public Dimension Dimension { get; }

    /// <summary>Demand / capacity; infinite when there is a demand and no capacity, null when nothing was checked.</summary>
    public double? Utilization { get; private init; }

    /// <summary>Pass when the utilization is at most 1.</summary>
    public Verdict Verdict { get; private init; }

    /// <summary>Why nothing was checked, or why there is no capacity; else empty.</summary>
    public string Reason { get; private init; } = "";

    /// <summary>The error that the calculation broke off with, for a report of it; null when there was none.</summary>
    public Exception? Error => failure?.Error;

    /// <summary>The rule that is checked, with edition and clause.</summary>
    public Source Source { get; }

    /// <summary>The inputs that nobody gave and the check rests on, as in "friction at the saddle 0.2".</summary>
    public ValueList<string> AssumedInputs { get; private init; } = [];

    /// <summary>
    /// The verdict in words: "pass", "FAIL", "not checked", with what was assumed, as in "pass (assumed: friction at the
    /// saddle 0.2)", and with the reason.
    /// </summary>
    public string VerdictText
    {
        get
        {
            string assumed = AssumedInputs.Count > 0 ? $" (assumed: {string.Join("; ", AssumedInputs)})" : "";
            return VerdictWord + assumed + (Reason.Length > 0 ? $": {Reason}" : "");
        }
    }

    internal string VerdictWord => Verdict switch { Verdict.Pass => "pass", Verdict.Fail => "FAIL", _ => "not checked" };

    /// <summary>A check of a demand against a capacity.</summary>
    /// <remarks>
    /// A demand is a magnitude. One that is negative or not finite, or a capacity that is not finite, is an error of the
    /// calculation and gives <see cref="Verdict.NotChecked"/> with the reason, and so does a calculation that throws. No capacity fails unless the demand is
    /// zero, and a negative capacity, as when other stresses have used it up, fails always.
    /// </remarks>
    /// <param name="subject">What is checked, and where.</param>
    /// <param name="dimension">What demand and capacity measure; <see cref="Dimension.Number"/> for an interaction sum.</param>
    /// <param name="source">The rule, with edition and clause.</param>
    /// <param name="calculation">
    /// The pure function that gives demand and capacity in SI units, telling its steps to a listener. It runs once now,
    /// without one, and again whenever the working is asked for.
    /// </param>
    /// <param name="assumedInputs">The inputs that nobody gave.</param>
    public static Check Of(CheckSubject subject, Dimension dimension, Source source,
        Func<Working?, (double Demand, double Capacity)> calculation, params ReadOnlySpan<string> assumedInputs)
    {
        double demand, capacity;
        try
        {
            (demand, capacity) = calculation(null);
        }
        catch (Exception e) when (InternalError.Is(e))
        {
            return BrokenOff(subject, e, source);
        }
        var check = new Check(subject, dimension, source, new Calculation(calculation))
        {
            Demand = double.IsFinite(demand) ? demand : null,
            Capacity = double.IsFinite(capacity) ? capacity : null,
            AssumedInputs = ValueList.Create(assumedInputs),
        };
        if (UtilizationOf(demand, capacity) is not { } utilization)
            return check with { Verdict = Verdict.NotChecked, Reason = Doubt(demand, capacity)! };
        if (double.IsPositiveInfinity(utilization))
            return check with { Verdict = Verdict.Fail, Reason = capacity < 0 ? "the capacity is negative" : "there is no capacity", Utilization = utilization };
        return check with { Verdict = utilization <= 1 ? Verdict.Pass : Verdict.Fail, Utilization = utilization };
    }

    /// <summary>A check that could not be done, so that its absence is seen.</summary>
    /// <param name="subject">What is not checked, and where.</param>
    /// <param name="reason">Why, as in "the anchor bars are not described".</param>
    /// <param name="source">The rule that asks for the check.</param>
    /// <exception cref="ArgumentException">The reason is empty.</exception>
    public static Check NotChecked(CheckSubject subject, string reason, Source source)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(reason);
        return new Check(subject, Dimension.Number, source, null) { Verdict = Verdict.NotChecked, Reason = reason };
    }

    /// <summary>A check whose calculation broke off by an error of the library or of what a user gave to it.</summary>
    internal static Check BrokenOff(CheckSubject subject, Exception error, Source source) =>
        NotChecked(subject, InternalError.InWords(error), source) with { failure = new Failure(error) };

    /// <summary>The same numbers under another subject, as the worst of several checks that stands for all.</summary>
    internal Check About(CheckSubject subject) => this with { Subject = subject };

    /// <summary>The same check, resting on more inputs that nobody gave; each counts once.</summary>
    /// <param name="inputs">Each in words with its value.</param>
    public Check Assuming(params ReadOnlySpan<string> inputs) =>
        this with { AssumedInputs = AssumedInputs.Concat(inputs.ToArray()).Distinct().ToValueList() };

    /// <summary>The same check, whose working begins with how its demand comes about.</summary>
    internal Check From(DemandOrigin? origin)
    {
        if (origin is null || calculation is not { Run: var run })
            return this;
        return this with
        {
            calculation = new Calculation(w =>
            {
                origin.Tell(w);
                return run(w);
            }),
        };
    }

    /// <summary>The utilization to two decimals, as sheets print it: one above 1 never reads as 1.00; "–" when nothing was checked.</summary>
    public string UtilizationText => Utilization is { } utilization ? CheckNumber.Utilization(utilization) : "–";

    /// <summary>Runs the calculation again and returns its working, to the utilization and the verdict.</summary>
    public Working Working()
    {
        var w = new Working();
        if (calculation is not null)
        {
            (double demand, double capacity) = calculation.Run(w);
            w.Given(demand, Dimension);
            w.Given(capacity, Dimension, "", Source);
            if (Utilization is { } utilization && double.IsFinite(utilization) && capacity != 0)
                w.Let("utilization", demand / capacity, Dimension.Number, meaning: utilization <= 1 ? "≤ 1" : "> 1");
        }
        w.Note(VerdictText);
        return w;
    }

    /// <summary>The check on one short line, as in "bars.bending, band 3: 0.71 pass (2 assumed)"; what was assumed is in <see cref="VerdictText"/>.</summary>
    public override string ToString() => Utilization is { } utilization
        ? $"{Subject}: {CheckNumber.Utilization(utilization)} {VerdictWord}{(AssumedInputs.Count > 0 ? FormattableString.Invariant($" ({AssumedInputs.Count} assumed)") : "")}"
        : $"{Subject}: {VerdictWord}: {Reason}";

    /// <summary>Demand over capacity; infinite without capacity, null when the numbers make no sense.</summary>
    internal static double? UtilizationOf(double demand, double capacity) =>
        Doubt(demand, capacity) is not null ? null
        : capacity < 0 || (capacity == 0 && demand > 0) ? double.PositiveInfinity
        : demand == 0 ? 0 : demand / capacity;

    private static string? Doubt(double demand, double capacity) =>
        double.IsNaN(demand) ? "the demand is not a number"
        : double.IsNaN(capacity) ? "the capacity is not a number"
        : double.IsInfinity(demand) ? "the demand is infinite"
        : double.IsInfinity(capacity) ? "the capacity is infinite"
        : demand < 0 ? "the demand is negative, where a magnitude is meant"
        : null;

    /// <summary>An error, which is no part of what a check says beside its reason: all are equal.</summary>
    private sealed record Failure(Exception Error)
    {
        public bool Equals(Failure? other) => other is not null;

        public override int GetHashCode() => 0;
    }

    /// <summary>The calculation, which is no part of what a check says: all are equal.</summary>
    private sealed record Calculation(Func<Working?, (double Demand, double Capacity)> Run)
    {
        public bool Equals(Calculation? other) => other is not null;

        public override int GetHashCode() => 0;
    }
}
