namespace StatueFrame.Works;

/// <summary>When a work must be done.</summary>
public enum Urgency
{
    /// <summary>Now, and the site is closed in wind until then: a check of the statue as it is fails there, or the part has failed.</summary>
    AtOnce,

    /// <summary>Before the next season of storms: little strength is left, or the part is damaged.</summary>
    BeforeStorms,

    /// <summary>At the next renewal: worn.</summary>
    Planned,

    /// <summary>Look again at the next inspection.</summary>
    Watch,
}
