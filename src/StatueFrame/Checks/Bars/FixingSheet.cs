using StatueFrame.Analysis;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>
/// Writes the checks of the standoffs' bolts, welds, saddles and clearances in one situation into a sheet: of every ring
/// the bar that is worst for the check, each bar in the state of its own worst stress.
/// </summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class FixingSheet(StatueModel model, Criteria criteria, Response response, SheetLists lists)
{
    private static readonly Source page = Source.Assumed("bars");

    private readonly string situation = response.Situation.Name;
    private readonly bool isStrength = response.Situation.LimitState == LimitState.Strength;

    private readonly Dictionary<(string Id, string Title, string Reason), List<string>> missing = [];

    public void Add()
    {
        int firstBar = 0;
        foreach ((RingElement ring, int band) in model.Rings)
        {
            if (isStrength)
            {
                AddEnd(ring, firstBar, atSkin: false);
                AddEnd(ring, firstBar, atSkin: true);
                AddSaddle(ring, firstBar);
            }
            AddClearance(ring, band);
            firstBar += ring.Bars.Length;
        }
        foreach (((string id, string title, string reason), List<string> where) in missing)
            lists.Checks.Add(Check.NotChecked(new CheckSubject(id, title, where.Count == 1 ? where[0] : Invariant($"{where[0]} and {where.Count - 1} more"), situation), reason, page));
    }

    private void AddEnd(RingElement ring, int firstBar, bool atSkin)
    {
        string end = atSkin ? "skin" : "tower";
        if (Array.Exists(ring.Bars, bar => FixingOf(bar, atSkin) is null))
            Miss("bars.fixings", $"bolts or welds of standoffs, {end} end", $"they are not described (Standoff.{(atSkin ? nameof(Standoff.SkinFixing) : nameof(Standoff.TowerFixing))})", ring);
        AddWorst<BoltedFixing>((bar, bolts, design) => FixingChecks.Bolts(bar, bolts, design, atSkin));
        AddWorst<BoltedFixing>((bar, bolts, design) => FixingChecks.Bearing(bar, bolts, design, atSkin));
        AddWorst<BoltedFixing>((bar, bolts, design) => FixingChecks.NetSection(bar, bolts, design, atSkin));
        AddWorst<WeldedFixing>((bar, welds, design) => WeldChecks.Fillets(bar, welds, design, atSkin));

        void AddWorst<T>(Func<LoadedBar, T, BarDesign, Check> check) where T : StandoffFixing
        {
            Check? worst = null;
            BarDesign? used = null;
            for (int i = 0; i < ring.Bars.Length; i++)
            {
                if (FixingOf(ring.Bars[i], atSkin) is not T fixing)
                    continue;
                LoadedBar bar = LoadedBar.Of(response.Bars[firstBar + i], situation);
                BarDesign design = DesignFor(bar.Material);
                Check found = check(bar, fixing, design);
                if (IsWorse(found, worst))
                    (worst, used) = (found, design);
            }
            if (worst is null)
                return;
            lists.Checks.Add(worst);
            if (used!.Code == DesignCode.En1993)
                lists.Assume([new Assumption($"partial factors of fixings of {(used.Metal == MetalKind.StainlessSteel ? "stainless" : "structural")} standoffs", Invariant($"γ_M0 {used.GammaM0}, γ_M2 {used.GammaM2}"), new Source("EN 1993-1-8:2005", "Table 2.1, recommended values"))], lists.Checks.Count - 1);
            else if (used.Code == DesignCode.AllowableStress && criteria.BarStressFraction is null)
                lists.Assume([SituationSheet.AllowableStress], lists.Checks.Count - 1);
        }
    }

    /// <summary>Saddles that hold by friction; those that slide are looked at with heat.</summary>
    private void AddSaddle(RingElement ring, int firstBar)
    {
        Check? worst = null;
        for (int i = 0; i < ring.Bars.Length; i++)
        {
            Standoff standoff = ring.Bars[i].Bar.Place.Standoff;
            if (standoff.Slide != SaddleSlide.None)
                Miss("bars.saddle-slip", "slip of a clamped saddle", "the saddles are meant to slide; heat.bar-stress counts their friction", ring);
            else if (standoff.Saddle is null)
                Miss("bars.saddle-slip", "slip of a clamped saddle", $"the saddle is not described (Standoff.{nameof(Standoff.Saddle)})", ring);
            else if (SaddleChecks.Slip(response.Bars[firstBar + i].AlongSkin, standoff.Saddle.Clamp, standoff.Saddle.Friction, standoff.Saddle.Faces, DesignFor(standoff.Material).GammaM3, response.Bars[firstBar + i].Where, situation) is var found && IsWorse(found, worst))
                worst = found;
        }
        if (worst is not null)
        {
            lists.Checks.Add(worst);
            lists.Assume([new Assumption("safety of saddles against slip", "γ_M3 1.25", new Source("EN 1993-1-8:2005", "Table 2.1, recommended value"))], lists.Checks.Count - 1);
        }
    }

    private void AddClearance(RingElement ring, int band)
    {
        Check? worst = null;
        for (int i = 0; i < ring.Bars.Length; i++)
        {
            if (ring.Bars[i].Bar.Place.Standoff.Clearance is not { } clearance)
            {
                Miss("bars.clearance", "clearance to the tower", $"it is not described (Standoff.{nameof(Standoff.Clearance)})", ring);
                continue;
            }
            double inward = 0;
            foreach (LoadCase loadCase in response.Cases)
                inward = Math.Max(inward, loadCase.Approach(ring, ring.Bars[i], band));
            Check found = SaddleChecks.Clearance(clearance, Length.FromMeters(inward), Length.Zero, Invariant($"{ring.BandName}, bar {i + 1}"), situation);
            if (IsWorse(found, worst))
                worst = found;
        }
        if (worst is not null)
            lists.Checks.Add(worst);
    }

    private static StandoffFixing? FixingOf(BarModel bar, bool atSkin) =>
        atSkin ? bar.Bar.Place.Standoff.SkinFixing : bar.Bar.Place.Standoff.TowerFixing;

    private BarDesign DesignFor(Material material) =>
        BarDesign.For(material, criteria.BarCode) with { AllowableFraction = criteria.BarStressFraction ?? SituationSheet.DefaultBarStressFraction };

    /// <summary>A check that was not done counts above all that were, so that it is seen.</summary>
    private static bool IsWorse(Check found, Check? worst) =>
        worst is null || Extremes.Exceeds(found.Utilization ?? double.MaxValue, worst.Utilization ?? double.MaxValue);

    private void Miss(string id, string title, string reason, RingElement ring)
    {
        if (!missing.TryGetValue((id, title, reason), out List<string>? where))
            missing[(id, title, reason)] = where = [];
        if (where.Count == 0 || where[^1] != ring.BandName)
            where.Add(ring.BandName);
    }
}
