namespace StatueFrame.Reporting;

/// <summary>
/// The calculation package: one HTML file that a checking engineer can follow with a pencil, on screen and on paper. It
/// holds the statue's data, the actions, the results, every check with its working, what was assumed, what was not
/// checked, and an index of sources.
/// </summary>
/// <remarks>
/// The file needs nothing else: no network, no script, no font of its own. Names that users give are escaped wherever
/// they stand. Immutable and safe to share between threads.
/// </remarks>
public sealed record CalculationPackage
{
    /// <summary>The statue that was checked.</summary>
    public required Statue Statue { get; init; }

    /// <summary>The situations that were checked.</summary>
    public required ValueList<Situation> Situations { get; init; }

    /// <summary>The result.</summary>
    public required CheckSheet Sheet { get; init; }

    /// <summary>The limits that were compared with; null leaves that table out.</summary>
    public Criteria? Criteria { get; init; }

    /// <summary>Number or letter of the revision, as in "B"; empty when there is none.</summary>
    public string Revision { get; init; } = "";

    /// <summary>Date of issue, as it is to be printed; empty for a line to write it on.</summary>
    public string Date { get; init; } = "";

    /// <summary>Project, client or file number, printed below the title; may be empty.</summary>
    public string Reference { get; init; } = "";

    /// <summary>Who made the calculation; empty for a line to write it on.</summary>
    public string PreparedBy { get; init; } = "";

    /// <summary>What the calculation rests on, one sentence an item: codes agreed with the authority, surveys, drawings.</summary>
    public ValueList<string> Basis { get; init; } = [];

    /// <summary>The pictures, in order.</summary>
    public ValueList<Figure> Figures { get; init; } = [];

    /// <summary>Tables at the end, as those of StatueFrame.Works, in order.</summary>
    public ValueList<Appendix> Appendices { get; init; } = [];

    /// <summary>The units to print in.</summary>
    public DisplayUnits Units { get; init; } = DisplayUnits.Metric;

    /// <summary>The paper it is laid out for.</summary>
    public PaperSize Paper { get; init; } = PaperSize.A4;

    /// <summary>How much of the workings is shown: by default the worst of each kind in full, and of the others a line a part.</summary>
    public WorkingExtent Workings { get; init; } = WorkingExtent.WorstOfEachKind;

    /// <summary>Checks a statue and packs the result.</summary>
    /// <param name="statue">The statue.</param>
    /// <param name="criteria">What is enough.</param>
    /// <param name="situations">The situations to check; at least one.</param>
    /// <exception cref="InvalidStatueException">The statue, the criteria or the situations have problems, all of which are listed.</exception>
    public static CalculationPackage Of(Statue statue, Criteria criteria, params ReadOnlySpan<Situation> situations)
    {
        ArgumentNullException.ThrowIfNull(statue);
        return new()
        {
            Statue = statue,
            Situations = ValueList.Create(situations),
            Criteria = criteria,
            Sheet = statue.Check(criteria, situations),
        };
    }

    /// <summary>The same from what acts by itself: the basis of design makes the situations.</summary>
    /// <param name="statue">The statue.</param>
    /// <param name="criteria">What is enough, and the basis of design.</param>
    /// <param name="actions">What acts, at its characteristic values.</param>
    /// <exception cref="InvalidStatueException">The statue, the criteria or the actions have problems, all of which are listed.</exception>
    public static CalculationPackage Of(Statue statue, Criteria criteria, CharacteristicActions actions)
    {
        ArgumentNullException.ThrowIfNull(statue);
        CheckSheet sheet = statue.Check(criteria, actions);
        return new() { Statue = statue, Situations = criteria.Basis.Combine(actions), Criteria = criteria, Sheet = sheet };
    }

    /// <summary>The package as the text of an HTML file.</summary>
    /// <param name="progress">Told the part of the workings that is written, 0 to 1.</param>
    /// <param name="cancellation">Stops the writing.</param>
    /// <exception cref="OperationCanceledException">The writing was stopped.</exception>
    public string ToHtml(IProgress<double>? progress = null, CancellationToken cancellation = default) =>
        new PackageWriter(this, progress, cancellation).Write();

    /// <summary>Writes the package to a file, in UTF-8.</summary>
    /// <param name="path">Where to; an existing file is replaced.</param>
    /// <param name="progress">Told the part of the workings that is written, 0 to 1.</param>
    /// <param name="cancellation">Stops the writing; the file is then left as it was.</param>
    /// <exception cref="IOException">The file cannot be written.</exception>
    /// <exception cref="OperationCanceledException">The writing was stopped.</exception>
    public void Save(string path, IProgress<double>? progress = null, CancellationToken cancellation = default) =>
        WholeFile.Write(path, ToHtml(progress, cancellation));
}
