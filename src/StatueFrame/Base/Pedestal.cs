namespace StatueFrame;

/// <summary>What the statue stands on: courses of masonry or lifts of concrete, from the top down.</summary>
/// <remarks>Immutable and safe to share between threads. Wind on the pedestal itself is not counted.</remarks>
public sealed record Pedestal
{
    /// <summary>The courses from the one under the base down, 1 to 200.</summary>
    public required ValueList<PedestalCourse> Courses { get; init; }

    internal double Height => Courses.Sum(course => course.Height.Meters);

    internal double Weight => Courses.Sum(course => course.Weight);

    internal void Validate(Validator v)
    {
        int count = 0;
        foreach ((_, PedestalCourse course, Validator at) in v.Items(Courses, 200))
        {
            course.Validate(at);
            count++;
        }
        if (Courses is not null && count == 0)
            v.Add(nameof(Courses), "must not be empty", "Leave Pedestal null when there is none.");
    }
}
