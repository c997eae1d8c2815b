using StatueFrame.Analysis;

namespace StatueFrame.Checks;

/// <summary>Writes what cores, hold-down, pedestal and foundation say in one situation into a sheet, as far as they are described.</summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class BaseSheet(StatueModel model, Criteria criteria, SituationDemands demands, SheetWriter lists)
{
    public void Add()
    {
        Statue statue = model.Statue;
        string situation = demands.Situation.Name;
        bool isStrength = demands.Situation.LimitState == LimitState.Strength;
        new CoreSheet(model, criteria, demands, lists).Add();
        if (statue is { HoldDown: null, Pedestal: null, Foundation: null })
            return;
        BaseState[] states = BaseState.Of(demands.OnBase()), tipping = BaseState.Of(demands.OnBaseInEquilibrium());
        BaseDesign design = criteria.BaseInUse;
        if (statue.HoldDown is { } holdDown)
        {
            var sheet = new HoldDownSheet(statue, holdDown, IsRound(model.Segments[0].Segment), design, states, tipping, situation, lists);
            if (isStrength)
                sheet.AddStrength();
            else
                sheet.AddService();
            if (isStrength)
                new FootSheet(model, criteria, demands, lists).Add();
        }
        if (statue.Pedestal is { } pedestal)
            new PedestalSheet(statue, pedestal, design, states, tipping, situation, lists).Add(isStrength);
        if (statue.Foundation is { } foundation)
        {
            var sheet = new FoundationSheet(model, foundation, criteria, states, tipping, situation, lists);
            if (isStrength)
                sheet.AddStrength();
            else
                sheet.AddService(demands.IsSteady);
        }
    }

    private static bool IsRound(TowerSegment segment) =>
        (segment switch { LatticeSegment lattice => lattice.Legs, MemberSegment member => member.Section, _ => null }) is { OutlineDiameter: not null };
}
