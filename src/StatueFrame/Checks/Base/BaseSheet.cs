using StatueFrame.Analysis;

namespace StatueFrame.Checks;

/// <summary>Writes what cores, hold-down, pedestal and foundation say in one situation into a sheet, as far as they are described.</summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class BaseSheet(StatueModel model, Criteria criteria, Response response, PartDemands demands, SheetLists lists)
{
    public void Add()
    {
        Statue statue = model.Statue;
        string situation = response.Situation.Name;
        bool isStrength = response.Situation.LimitState == LimitState.Strength;
        new CoreSheet(model, criteria, response, demands, lists).Add();
        if (statue is { HoldDown: null, Pedestal: null, Foundation: null })
            return;
        BaseState[] states = BaseState.Of(model, demands);
        if (statue.HoldDown is { } holdDown)
        {
            var sheet = new HoldDownSheet(statue, holdDown, criteria.Base, states, situation, lists);
            if (isStrength)
                sheet.AddStrength();
            else
                sheet.AddService();
        }
        if (statue.Pedestal is { } pedestal)
            new PedestalSheet(statue, pedestal, criteria.Base, states, situation, lists).Add(isStrength);
        if (statue.Foundation is { } foundation)
        {
            var sheet = new FoundationSheet(model, foundation, criteria, states, situation, lists);
            if (isStrength)
                sheet.AddStrength();
            else
                sheet.AddService(demands.IsSteady);
        }
    }

    /// <summary>The checks of cores and base that a statue needs and its sheet may not hold.</summary>
    public static IEnumerable<(string Id, string Title, string Reason)> NotChecked(StatueModel model)
    {
        const string strength = "no strength situation was given", service = "no service situation was given";
        Statue statue = model.Statue;
        bool hasBlocks = model.Bodies.Any(body => body.Segments.Any(segment => segment.Segment is BlockSegment));
        if (hasBlocks)
        {
            yield return ("core.overturning", "strength and overturning of the core", strength);
            yield return ("core.kern", "thrust within the kern, no open joint", service);
        }
        if (model.Bodies.Any(body => body.Segments.Any(segment => segment.Segment is CoreSegment)))
            yield return ("core.capacity", "strength of the core", "the core is given by its rigidities alone; describe it by MasonrySegment or ConcreteSegment");
        if (statue.HoldDown is null)
        {
            yield return ("base.hold-down", "anchor bars and base plates", "no hold-down is described (Statue.HoldDown)");
        }
        else
        {
            yield return ("base.overturning", "anchor bars and base plates", strength);
            yield return ("base.separation", "opening of the pre-tensioned base", service);
        }
        yield return statue.Pedestal is null ? ("pedestal.joints", "pedestal", "no pedestal is described (Statue.Pedestal)") : ("pedestal.overturning", "bed joints of the pedestal", strength);
        if (statue.Pedestal is not null)
            yield return ("pedestal.kern", "thrust within the kern, no open joint", service);
        yield return statue.Foundation is null ? ("foundation.block", "foundation and ground", "no foundation is described (Statue.Foundation)") : ("foundation.overturning", "foundation and ground", strength);
        if (statue.Foundation is not null)
            yield return ("foundation.uplift", "pressure on the ground, part that lifts, tilt", service);
    }
}
