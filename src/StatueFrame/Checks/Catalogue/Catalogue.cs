namespace StatueFrame.Checks;

/// <summary>
/// The one catalogue of checks. What a sheet, a study or a page says of a kind of check, it says from here; the entries that
/// run by themselves are held by their families and listed here with the others.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal static class Catalogue
{
    private const string NoStrength = "no strength situation was given", NoService = "no service situation was given";
    private const string NoWind = "no strength situation has wind", NoPlate = "no body is flat like a plate along a wind", NoHeat = "no situation has a temperature action", NoShock = "no situation has a shock";
    private const string NoEarthquake = "no situation has an earthquake", NoPlates = "no hold-down is described (Statue.HoldDown)";
    private const string NoPedestal = "no pedestal is described (Statue.Pedestal)", NoGround = "no foundation is described (Statue.Foundation)";
    private const string NoCore = "no core is described by its strength", NoAir = "the air is not described (Statue.Corrosion)";
    private const Nature Strength = Nature.Strength, Service = Nature.Service, Range = Nature.Range;

    /// <summary>Stands for bolts and welds of standoffs that are not described.</summary>
    public static readonly CheckEntry Fixings = new("bars.fixings", "bolts or welds of standoffs", Strength, "ends that are not described", "", "", NoStrength);

    private static readonly CheckEntry[] entries =
    [
        BarChecks.BendingEntry, BarSectionChecks.Yield, BarBucklingChecks.StrutEntry, BarBucklingChecks.BeamColumnEntry, BarBucklingChecks.SecondOrderEntry,
        BarChecks.LocalEntry, FixingChecks.BoltsEntry, FixingChecks.BearingEntry, FixingChecks.TearOutEntry, FixingChecks.NetSectionEntry, WeldChecks.FilletsEntry,
        Fixings, BracketChecks.BendingEntry, BracketChecks.WeldEntry, FaceChecks.UnderBrackets, FaceChecks.UnderBars, FaceChecks.UnderRoots, FaceChecks.UnderHorizontals, SaddleChecks.SlipEntry, SaddleChecks.StopEntry, SaddleChecks.ClearanceEntry,
        FatigueParts.Standoffs,
        new("bars.fatigue-range", "greatest stress range of a standoff", Range, "every bar with a detail", "greatest stress range", "1.5 f_y", "no service situation has wind"),
        LevelSheet.BendingEntry, LevelSheet.WeldEntry, LevelSheet.StiffnessEntry, .. LevelSheet.BracingEntries.OfBraces, .. PlateSheet.All, FittingSheet.FixingEntry, .. FatigueParts.All, .. SkinFatigue.All, HubSheet.BendingEntry, HubSheet.WeldEntry, HubSheet.StiffnessEntry, .. MemberEntries.Tower.All, .. MemberEntries.Limbs.All,
        new("calculation.broken-off", "part of this sheet that broke off", Strength, "every part of the sheet", "", "", "an internal error"),
        .. AccuracyChecks.All,
        new("stability.buckling", "buckling of the whole statue", Strength, "the load case in which it buckles first", "the loads", "the loads at which it buckles", NoStrength),
        new("stability.second-order", "buckling factor of the whole statue", Range, "the load case in which it buckles first", "least buckling factor", "α_cr", NoStrength),
        new("sheet.panel-bending", "stress in a panel of sheet", Strength, "the panel of every band", "greatest stress under local pressure and suction", "fraction of proof strength", NoWind),
        new("sheet.panel-deflection", "deflection of a panel of sheet", Service, "the panel of every band", "deflection under local pressure and suction", "limit of the armature", NoWind),
        FineSheet.ShellStress,
        new("sheet.buckling", "buckling of sheet under its own weight", Strength, "the thinnest sheet of every body", "stress of the sheet above", "buckling stress over its safety", "the skin's armature is not described"),
        new("sheet.denting", "dent left by a load on a panel", Service, "the thinnest sheet of every body", "dent", "allowed dent", "no maintenance load is given"),
        new("sheet.sag", "sag of a level panel under its own weight", Service, "the thinnest sheet of every body", "sag", "limit", "the skin's armature is not described"),
        new("sheet.frequency", "lowest frequency of a panel", Service, "the thinnest sheet of every body", "least frequency", "lowest frequency of a panel", "no least frequency is given"),
        ArmatureChecks.SpanEntry,
        new("armature.bending", "stress in an armature bar", Strength, "the armature of every band", "stress under local pressure and weight", "fraction of proof strength", NoWind),
        new("armature.deflection", "deflection of an armature bar", Service, "the armature of every band", "deflection under local pressure", "limit of the armature", NoWind),
        new("straps.pull-off", "rivets of a strap and the sheet round their heads", Strength, "the straps of every band", "suction on a rivet", "punching, and rivet in tension", NoWind),
        new("straps.shear", "rivets of a strap under the weight of the sheet", Strength, "the straps of every band", "weight on a rivet", "shear of the rivet", NoWind),
        new("straps.bearing", "sheet and strap in bearing and tear-out at the rivets of a strap", Strength, "the straps of every band", "weight on a rivet", "bearing and tear-out of the weaker", NoWind),
        new("straps.distances", "distances of the rivets of a strap", Strength, "the straps of every body", "least distances", "distances that the strap has", "no straps are described"),
        new("straps.bending", "strap bent between its rivets and the bar", Strength, "the straps of every band", "stress under local suction", "fraction of proof strength", NoWind),
        new("seams.shear", "rivets of a seam in shear", Strength, "the seams of every band", "force on a rivet", "shear of the rivet", NoWind),
        new("seams.bearing", "sheet of a seam in bearing and tear-out", Strength, "the seams of every band", "force on a rivet", "bearing and tear-out", NoWind),
        new("seams.net-section", "net section of a seam", Strength, "the seams of every band", "force in the sheet", "sheet between the rivets", NoWind),
        new("seams.pull-through", "head of a rivet pulled through the sheet", Strength, "the seams of every band", "suction on a rivet", "punching, and rivet in tension", NoWind),
        new("seams.heat", "heat held back at a seam", Strength, "the seams of every band", "force of the heat that is held", "seam", NoHeat),
        new("seams.pitch", "pitch and edges of a seam", Strength, "the seams of every body", "least and greatest distances", "distances given", "the skin's seams are not described"),
        HeatChecks.BarStressEntry,
        new("heat.bar-deflection", "deflection of a standoff by heat", Range, "every bar", "deflection", "0.24 of the length, where small deflections end", NoHeat),
        new("heat.saddle-travel", "travel of a saddle with heat", Strength, "every saddle that slides", "slide with its reserve", "free travel", NoHeat),
        new("heat.joint-gap", "gap of a joint in the skin", Service, "every joint", "closing or opening", "gap", NoHeat),
        new("heat.restraint", "stress in a skin held against heat", Strength, "every band", "stress by the forces of the bars", "allowable stress", NoHeat),
        new("wind.rigid", "gusts as static loads", Range, "the lowest mode", "1 Hz", "lowest natural frequency; below 1 Hz not checked: gusts need the dynamic method", NoWind),
        new("wind.gust-factor", "gust factor that the forces are worked out with", Range, "every heading", "c_s c_d or G found for the statue's own modes and damping", "gust factor in use", NoWind),
        new("wind.minimum", "least wind force of ASCE 7", Range, "every heading", "0.77 kPa on the area of skin that the wind meets", "wind force on the skin that is worked with", "the wind is not one of ASCE 7"),
        new("wind.gust-effects", "peaks by gusts against steady analysis", Range, "shear, bending and twist of every cut of trunk and limbs, standoffs of every ring, sway of every point, in every heading", "peak by random vibration", "the peak pressure with the gust factors in use", NoWind),
        new("wind.vortex", "vortex resonance across the wind", Service, "every described section of trunk and limbs, every bare tube, box and core", "critical speed against the wind's, or amplitude", "the wind's speed, or the user's limit", "no situation has wind on a skin, tube, box or core"),
        new("wind.galloping", "galloping across the wind", Strength, "every described section of trunk and limbs, every bare tube, box and core", "the wind's speed", "onset speed", "no situation has wind on a skin, tube, box or core"),
        new("wind.divergence", "torsional divergence of a flat body", Strength, "trunk and limbs with a band thinner than a quarter of its chord", "twice the mean wind along the chord", "speed of divergence", NoPlate),
        new("wind.flutter", "flutter of a flat body", Strength, "trunk and limbs with a band thinner than a quarter of its chord", "twice the frequency of bending", "frequency of twist; nearer than that not checked: specialist advice", NoPlate),
        new("wind.bare", "wind on tower that no skin covers", Strength, "segments of a core without a plan", "", "", "the shape of a core that stands in the open is not known; give its levels a plan"),
        new("core.overturning", "overturning about the edge of a core", Strength, "every cut of every segment, every state", "what tips", "what holds", NoCore),
        new("core.toe-stress", "stress at the toe of a core", Strength, "every cut of every segment, every state", "stress on the pressed part", "strength", NoCore),
        new("core.capacity", "compression of a core with its eccentricity", Strength, "every cut of every segment, every state", "compression", "capacity with slenderness", NoCore),
        new("core.shear", "shear of a core", Strength, "every cut of every segment, every state", "shear", "shear on the pressed part", NoCore),
        new("core.interaction", "axial force and bending of reinforced concrete", Strength, "every cut of every segment, every state", "axial force and moments", "interaction surface", NoCore),
        new("core.kern", "thrust of a core within the kern", Service, "every cut of every segment, service situations", "eccentricity", "kern", NoService),
        new("base.overturning", "overturning about the edge of the plates", Strength, "every side of the plates, every state", "what tips", "weight at 0.9 of its own value and bars", NoPlates),
        new("base.bearing", "pressure under the base plates", Strength, "the plates together, every state", "greatest pressure", "strength of what they stand on", NoPlates),
        new("base.plate-bending", "bending of a base plate under pressure", Strength, "the plates together, every state, AISC", "moment", "plastic moment", NoPlates),
        new("base.sliding", "sliding of the base", Strength, "the plates together, every state", "shear", "friction, key and bars", NoPlates),
        new("base.separation", "opening of the pre-tensioned base", Service, "the plates together, service situations", "tension by the loads", "pre-tension after losses", NoPlates),
        new("base.anchor-tension", "tension in an anchor bar", Strength, "every bar, every state", "tension", "steel of the bar", NoPlates),
        new("base.anchor-shear", "shear in an anchor bar", Strength, "every bar, every state", "shear", "steel of the bar", NoPlates),
        new("base.anchor-interaction", "tension with shear in an anchor bar", Strength, "every bar, every state", "interaction", "1", NoPlates),
        FootSheet.WeldEntry, FootSheet.BearingEntry, PlateUplift.OfFeet, FootSheet.AnchorEntry, PlateUplift.OfBase,
        new("base.splitting", "splitting of the concrete round an anchor bar", Strength, "every bar in concrete, every state", "distances in diameters, and transverse tension of its force", "1", NoPlates),
        new("base.edge-shear", "edge of the concrete in shear", Strength, "the bars nearest to each edge, every state", "shear of all bars", "wedge of concrete", NoPlates),
        new("base.pry-out", "concrete pried out behind bars in shear", Strength, "all bars, every state", "shear of all bars", "cone of concrete behind them", NoPlates),
        new("base.blow-out", "side of the block blown out by a bar's head", Strength, "every bar nearer to an edge than half its embedment, every state", "tension", "side of the block", NoPlates),
        new("base.breakout", "concrete cone of the anchor bars in tension", Strength, "the bars of each depth, every state", "pull of all", "cone of concrete", NoPlates),
        new("base.anchorage-weight", "weight above the ends of the anchor bars", Strength, "the bars of each depth, every state", "pull of all", "weight of the courses above", NoPlates),
        new("base.pull-out", "bearing of an anchor bar's head", Strength, "every bar, every state", "tension", "bearing of the head", NoPlates),
        new("base.bond", "bond of an anchor bar", Strength, "every bar, every state", "tension", "bond", NoPlates),
        new("base.girder-bending", "anchor girder in bending and shear", Strength, "every bar, every state", "stress", "yield strength", NoPlates),
        new("base.girder-bearing", "bearing of the block on the anchor girder", Strength, "every bar, every state", "pressure", "strength of the block", NoPlates),
        new("pedestal.overturning", "overturning about the edge of a bed joint", Strength, "every bed joint, every state", "what tips", "weight at 0.9 of its own value", NoPedestal),
        new("pedestal.toe-stress", "stress at the toe of a bed joint", Strength, "every bed joint, every state", "stress on the pressed part", "strength", NoPedestal),
        new("pedestal.capacity", "compression of a bed joint with its eccentricity", Strength, "every bed joint, every state", "compression", "capacity with slenderness", NoPedestal),
        new("pedestal.sliding", "sliding in a bed joint", Strength, "every bed joint, every state", "shear", "friction and bond", NoPedestal),
        new("pedestal.kern", "thrust of a bed joint within the kern", Service, "every bed joint, service situations", "eccentricity", "kern", NoService),
        new("foundation.overturning", "overturning about the edge of the foundation", Strength, "every edge, every state", "what tips", "weight at 0.9 of its own value", NoGround),
        new("foundation.sliding", "sliding on the ground", Strength, "the underside, every state", "shear", "friction", NoGround),
        new("foundation.bearing", "bearing of the ground", Strength, "the underside, every state", "load on the effective area", "bearing resistance", NoGround),
        new("foundation.bending", "block or mat in bending beyond the pedestal", Strength, "both directions, every state", "moment of the ground's greatest pressure, or of its own weight", "mesh of bars, or plain concrete", NoGround),
        new("foundation.shear", "block or mat in shear beyond the pedestal", Strength, "both directions, every state", "shear", "resistance without links", NoGround),
        new("foundation.punching", "block or mat punched by the pedestal", Strength, "perimeters to 2d, every state", "what the ground pushes outside", "resistance without links", "the block is of plain concrete, or not described"),
        new("foundation.reinforcement", "least reinforcement of the block or mat", Strength, "the mesh", "least steel", "steel", "the block is of plain concrete, or not described"),
        new("foundation.pressure", "pressure on the ground against the allowable one", Strength, "the underside, service situations", "pressure", "allowable pressure", NoGround),
        new("foundation.uplift", "part of the base that lifts", Service, "the underside, service situations", "part that lifts", "limit", NoGround),
        new("foundation.tilt-stability", "statue as an inverted pendulum on the ground", Strength, "the foundation, service situations", "weight times height", "rocking stiffness", NoGround),
        new("foundation.sway", "sway with the give of the ground", Service, "every limited point, service situations", "sway with tilt and slide", "the user's limit", NoGround),
        new("sway.limit", "sway at a named point", Service, "every limited point, service situations", "greatest sway over all headings, off the middle and with lift too, of limbs up and down", "the user's limit", "no sway limit was given"),
        new("comfort.sway", "comfort of people on a platform", Service, "every platform, every heading, every mode that vortices shake", "peak acceleration in the wind of a year", "ISO 10137:2007", "no platform is given"),
        new("comfort.storm-sway", "comfort of people on a platform in a storm", Service, "a script", "peak acceleration", "limit", "it is for scripts"),
        new("comfort.rhythm", "vibration by people in a rhythm", Service, "a script", "acceleration", "limit", "it is for scripts"),
        new("earthquake.overturning", "overturning on the base by weight alone", Strength, "along x and along y", "moment of the earthquake and of what else acts", "least weight on half the base", NoEarthquake),
        new("earthquake.sliding", "sliding on the base by weight alone", Strength, "the base", "shear", "friction of the least weight", NoEarthquake),
        new("earthquake.sway", "sway at a named point in an earthquake", Service, "every limited point", "sway with its displacement factor", "the user's limit", NoEarthquake),
        new("earthquake.response", "earthquake", Strength, "the statue", "", "", NoEarthquake),
        new("shock.overturning", "lifting of the base in a shock", Strength, "every direction, every time", "overturning moment", "what presses times the distance to the edge", NoShock),
        new("shock.clearance", "movement of the skin against the tower in a shock", Strength, "the bar that moves the farthest", "movement", "gap", NoShock),
        new("shock.sway", "sway at a named point in a shock", Service, "every limited point", "greatest sway from rest", "the user's limit", NoShock),
        new("shock.response", "pressure waves, blows and other shocks", Strength, "the statue", "", "", NoShock),
        new("metals.galvanic", "unlike metals in contact", Strength, "every contact", "difference of anodic indices", "what the surroundings allow", NoAir),
        new("metals.loss", "loss of thickness in the design life", Strength, "every section", "loss", "allowed part of the thickness", NoAir),
        new("life.end", "strength at the end of the design life", Strength, "the statue corroded for its design life", "worst strength check of the corroded statue", "1", NoAir),
        new("robustness.stands", "statue with a part gone", Strength, "a study", "", "", "it is a study of its own"),
    ];

    private static readonly Dictionary<string, CheckEntry> byId = entries.ToDictionary(entry => entry.Id);

    /// <summary>All entries, family by family.</summary>
    public static IReadOnlyList<CheckEntry> Entries => entries;

    /// <summary>The entry of an id; null for checks that a user makes.</summary>
    public static CheckEntry? Find(string id) => byId.GetValueOrDefault(id);

    /// <summary>What kind of question a check answers; strength for checks that a user makes.</summary>
    public static Nature NatureOf(string id) => Find(id)?.Nature ?? Nature.Strength;
}
