using StatueFrame.Analysis;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>
/// Writes the checks of the standoffs' bolts, welds, saddles and clearances in one situation into a sheet: of every ring
/// the bar, the heading and the bound on the skin that are worst for the check.
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
        foreach ((RingElement ring, int band) in model.Rings)
        {
            if (isStrength)
            {
                AddEnd(ring, band, atSkin: false);
                AddEnd(ring, band, atSkin: true);
                AddSaddle(ring, band);
            }
            AddClearance(ring, band);
        }
        foreach (((string id, string title, string reason), List<string> where) in missing)
            lists.Checks.Add(Check.NotChecked(new CheckSubject(id, title, where.Count == 1 ? where[0] : Invariant($"{where[0]} and {where.Count - 1} more"), situation), reason, page));
    }

    private void AddEnd(RingElement ring, int band, bool atSkin)
    {
        string end = atSkin ? "skin" : "tower";
        if (Array.Exists(ring.Bars, bar => FixingOf(bar, atSkin) is null))
            Miss("bars.fixings", $"bolts or welds of standoffs, {end} end", $"they are not described (Standoff.{(atSkin ? nameof(Standoff.SkinFixing) : nameof(Standoff.TowerFixing))})", ring);
        if (Array.TrueForAll(ring.Bars, bar => FixingOf(bar, atSkin) is null))
            return;
        IReadOnlyList<(int Bar, SkinAssumption Skin, double[] Forces)> states = new BarStates(response, ring, band, atSkin).All;
        LoadedBar[] bars = [.. states.Select(s => Loaded(ring, s.Bar, s.Skin, s.Forces))];
        AddWorst<BoltedFixing>((bar, bolts, design) => FixingChecks.Bolts(bar, bolts, design, atSkin));
        AddWorst<BoltedFixing>((bar, bolts, design) => FixingChecks.Bearing(bar, bolts, design, atSkin));
        AddWorst<BoltedFixing>((bar, bolts, design) => FixingChecks.TearOut(bar, bolts, design, atSkin));
        AddWorst<BoltedFixing>((bar, bolts, design) => FixingChecks.NetSection(bar, bolts, design, atSkin));
        AddWorst<WeldedFixing>((bar, welds, design) => WeldChecks.Fillets(bar, welds, design, atSkin));

        void AddWorst<T>(Func<LoadedBar, T, BarDesign, Check> check) where T : StandoffFixing
        {
            Check? worst = null;
            BarDesign? used = null;
            for (int i = 0; i < bars.Length; i++)
            {
                if (FixingOf(ring.Bars[states[i].Bar], atSkin) is not T fixing)
                    continue;
                BarDesign design = DesignFor(bars[i].Material);
                Check found = check(bars[i], fixing, design);
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

    private LoadedBar Loaded(RingElement ring, int bar, SkinAssumption skin, double[] forces)
    {
        BarPlacement place = ring.Bars[bar].Bar.Place;
        var ends = new BarForces(forces);
        return new LoadedBar
        {
            Section = place.Standoff.Section,
            Material = place.Standoff.Material,
            Length = Length.FromMeters(place.Length),
            TowerFixity = place.Standoff.TowerFixity,
            SkinFixity = place.Standoff.SkinFixity,
            Restraint = skin == SkinAssumption.LimpSkin ? BarRestraint.Free : BarRestraint.Sway,
            AtTower = BarSectionForces.AtTower(ends),
            AtSkin = BarSectionForces.AtSkin(ends),
            Where = Where(ring, bar),
            Situation = situation,
        };
    }

    private static string Where(RingElement ring, int bar) => Invariant($"{ring.BandName}, bar {bar + 1}");

    /// <summary>Saddles that hold by friction; those that are meant to slide have their travel and friction looked at with heat.</summary>
    private void AddSaddle(RingElement ring, int band)
    {
        Check? worst = null;
        foreach (BarModel bar in ring.Bars)
        {
            Standoff standoff = bar.Bar.Place.Standoff;
            if (standoff.Slide != SaddleSlide.None)
                continue;
            if (standoff.Saddle is not { } saddle)
            {
                Miss("bars.saddle-slip", "slip of a clamped saddle", $"the saddle is not described (Standoff.{nameof(Standoff.Saddle)})", ring);
                continue;
            }
            double along = response.Cases.Max(loadCase => loadCase.ForceAlongSkin(ring, bar, band));
            Check found = SaddleChecks.Slip(Force.FromNewtons(along), saddle.Clamp, saddle.Friction, saddle.Faces, DesignFor(standoff.Material).GammaM3, Where(ring, bar.Index), situation);
            if (IsWorse(found, worst))
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
            Check found = SaddleChecks.Clearance(clearance, Length.FromMeters(inward), Length.Zero, Where(ring, i), situation);
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
