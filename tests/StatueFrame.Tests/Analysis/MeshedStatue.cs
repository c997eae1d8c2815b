using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;
using StatueFrame.Mechanics.Statics;

namespace StatueFrame.Tests.Analyses;

/// <summary>
/// A sample statue as a plain frame: every standoff a chain of eight beams with springs at its ends, every member of a
/// one-bay lattice an element of its own, all hung on levels and bands by rigid offsets. Where bars, members and limbs lie is
/// worked out here anew; of the library it takes only the shells' masses and outlines.
/// </summary>
internal sealed class MeshedStatue
{
    private const int Pieces = 8;
    private const double Gravity = 9.80665;

    private readonly FrameBuilder builder = new();
    private readonly List<(double Mass, Vector3D Arm, InertiaTensor Inertia, int Node)> masses = [];
    private readonly Dictionary<string, (int Node, Vector3D NodeAt, Vector3D Center)> places = [];
    private readonly List<(int First, int Last)> bars = [];
    private readonly List<(string Name, SkinBand Band, Vector3D[] Axes, Vector3D Origin)> bands = [];

    public MeshedStatue(Statue statue)
    {
        AddBody("", statue.Tower, statue.Skin!, statue.Standoffs, statue.Seams, [Vector3D.UnitX, Vector3D.UnitY, Vector3D.UnitZ], default, null);
        foreach (Limb limb in statue.Limbs)
        {
            double h = limb.Heading.Radians, i = limb.Inclination.Radians;
            var z = new Vector3D(Math.Cos(i) * Math.Cos(h), Math.Cos(i) * Math.Sin(h), Math.Sin(i));
            var y = new Vector3D(Math.Cos(h + Math.PI / 2), Math.Sin(h + Math.PI / 2), 0);
            var from = places[limb.From];
            Vector3D origin = from.Center + new Vector3D(limb.Root.X.Meters, limb.Root.Y.Meters, limb.Root.Z.Meters);
            AddBody(limb.Name + "/", limb.Tower, limb.Skin!, limb.Standoffs, limb.Seams, [y.Cross(z), y, z], origin, from);
        }
        foreach (Fitting fitting in statue.Fittings)
            Hang(places[fitting.On], fitting.Mass.Kilograms, new Vector3D(fitting.At!.Value.X.Meters, fitting.At.Value.Y.Meters, fitting.At.Value.Z.Meters));
        Span<double> m = stackalloc double[36];
        foreach (var mass in masses)
        {
            m.Clear();
            new PointMass(mass.Node, mass.Mass, mass.Arm, mass.Inertia).AddMass(m);
            builder.AddMass(mass.Node, m);
        }
        Frame = builder.Build();
        Loads = new double[Frame.FreedomCount];
    }

    public Frame Frame { get; }

    public double[] Loads { get; }

    public int BarCount => bars.Count;

    public (Vector3D U, Vector3D Theta) Motion(double[] u, string place, Vector3D? at = null)
    {
        var p = places[place];
        var theta = new Vector3D(u[6 * p.Node + 3], u[6 * p.Node + 4], u[6 * p.Node + 5]);
        return (new Vector3D(u[6 * p.Node], u[6 * p.Node + 1], u[6 * p.Node + 2]) + theta.Cross((at ?? p.Center) - p.NodeAt), theta);
    }

    public IEnumerable<string> Places => places.Keys;

    /// <summary>The forces on a bar at its two ends, in its axes.</summary>
    public double[] BarForces(int bar, double[] u)
    {
        var forces = new double[12];
        Part(bars[bar].First)[..6].CopyTo(forces, 0);
        Part(bars[bar].Last)[6..].CopyTo(forces, 6);
        return forces;

        double[] Part(int index)
        {
            var beam = (BeamElement)Frame.Elements[index];
            var end = new double[12];
            double[] own = [.. u.AsSpan(6 * beam.Start, 6), .. u.AsSpan(6 * beam.End, 6)];
            beam.EndForces(own, end);
            return end;
        }
    }

    public void AddWeight(double factor)
    {
        Span<double> m = stackalloc double[144];
        foreach (FrameElement element in Frame.Elements)
        {
            m.Clear();
            element.AddMass(m);
            for (int i = 0; i < 12; i++)
                Loads[6 * (i < 6 ? element.Start : element.End) + i % 6] -= factor * Gravity * (m[12 * i + 2] + m[12 * i + 8]);
        }
        foreach (var mass in masses)
            Add(mass.Node, Frame.Nodes[mass.Node].Position, new Vector3D(0, 0, -factor * Gravity * mass.Mass), Frame.Nodes[mass.Node].Position + mass.Arm);
    }

    /// <summary>½ρv² · G · C_f · A on every band.</summary>
    public void AddWind(double factor, double heading)
    {
        var wind = new Vector3D(Math.Cos(heading), Math.Sin(heading), 0);
        double pressure = factor * 0.5 * 1.25 * SampleStatue.Gust * SampleStatue.Gust * 1.1 * 1.3;
        foreach (var (name, band, axes, origin) in bands)
        {
            WindExposure exposure = band.Exposure(new Vector3D(axes[0].Dot(wind), axes[1].Dot(wind), axes[2].Dot(wind)));
            Vector3D c = exposure.PressureCenter;
            Add(places[name].Node, places[name].NodeAt, pressure * exposure.ProjectedArea * wind, origin + c.X * axes[0] + c.Y * axes[1] + c.Z * axes[2]);
        }
    }

    public void AddForce(string place, Vector3D force, Vector3D at) => Add(places[place].Node, places[place].NodeAt, force, at);

    public double[] Solve() => new LinearStatics(Frame).Solve(Loads);

    private void Add(int node, Vector3D nodeAt, Vector3D force, Vector3D at)
    {
        Vector3D moment = (at - nodeAt).Cross(force);
        double[] six = [force.X, force.Y, force.Z, moment.X, moment.Y, moment.Z];
        for (int i = 0; i < 6; i++)
            Loads[6 * node + i] += six[i];
    }

    private void Hang((int Node, Vector3D NodeAt, Vector3D Center) place, double mass, Vector3D at, InertiaTensor inertia = default) =>
        masses.Add((mass, at - place.NodeAt, inertia, place.Node));

    private void AddBody(
        string prefix, Tower tower, Skin skin, ValueList<StandoffRing> rings, SeamStiffness? seams,
        Vector3D[] e, Vector3D origin, (int Node, Vector3D NodeAt, Vector3D Center)? root)
    {
        Vector3D Out(Vector3D p) => origin + p.X * e[0] + p.Y * e[1] + p.Z * e[2];
        Vector3D Axis(Vector3D p) => p.X * e[0] + p.Y * e[1] + p.Z * e[2];
        Vector3D Center(int level) => new(tower.Levels[level].OffsetX.Meters, tower.Levels[level].OffsetY.Meters, tower.Levels[level].Elevation.Meters);
        for (int i = 0; i < tower.Levels.Count; i++)
        {
            Vector3D at = Out(Center(i));
            places[prefix + tower.Levels[i].Name] = i == 0 && root is { } r ? (r.Node, r.NodeAt, at) : (builder.AddNode(at), at, at);
        }
        foreach (TowerLevel level in tower.Levels.Where(level => level.Frame is not null))
        {
            Vector3D[] legs = [.. Legs(level).Select(leg => new Vector3D(leg.X, leg.Y, level.Elevation.Meters))];
            double Line(Section section) => section.Area.SquareMeters * level.Frame!.Material.Density.KilogramsPerCubicMeter;
            for (int i = 0; i < legs.Length; i++)
                Hang(places[prefix + level.Name], Line(level.Frame!.Horizontals) * (legs[(i + 1) % legs.Length] - legs[i]).Length, Out(0.5 * (legs[i] + legs[(i + 1) % legs.Length])));
            if (legs.Length != 4)
                throw new InvalidOperationException("The reference model braces plans of four legs.");
            foreach (int i in (int[])[0, 1])
                Hang(places[prefix + level.Name], Line(level.Frame!.PlanBracing!) * (legs[i + 2] - legs[i]).Length, Out(0.5 * (legs[i] + legs[i + 2])));
        }
        if (root is null)
            Hold(tower.Base, places[tower.Levels[0].Name].Node);
        for (int i = 0; i < tower.Segments.Count; i++)
        {
            var low = places[prefix + tower.Levels[i].Name];
            var high = places[prefix + tower.Levels[i + 1].Name];
            if (tower.Segments[i] is MemberSegment member)
                AddTube(member, low, high);
            else
                AddPanel((LatticeSegment)tower.Segments[i], tower.Levels[i], tower.Levels[i + 1], low, high, Out);
        }
        SkinBand[] shells = BandBuilder.Bands(skin);
        for (int i = 0; i < shells.Length; i++)
        {
            string name = $"{prefix}band {i + 1}";
            Vector3D at = Out(shells[i].Centroid);
            places[name] = (builder.AddNode(at), at, at);
            bands.Add((name, shells[i], e, origin));
            Hang(places[name], shells[i].Mass, at, Turned(shells[i].Inertia, e));
            if (seams is not null && i > 0)
                AddSeam(seams, shells[i], places[$"{prefix}band {i}"], places[name], e, Out);
        }
        foreach (StandoffRing ring in rings)
        {
            int level = tower.Levels.ToList().FindIndex(l => l.Name == ring.Level);
            var on = places[prefix + ring.Level];
            if (ring is ExplicitRing given)
            {
                foreach (StandoffBar bar in given.Bars)
                    AddBar(Meters(bar.TowerEnd), Meters(bar.SkinEnd), RadialOf(skin, Meters(bar.SkinEnd)), bar.Standoff, on, places[$"{prefix}band {given.Band}"], FootOf(ring, tower.Levels[level], Meters(bar.TowerEnd)));
                continue;
            }
            var even = (EvenRing)ring;
            double z = Center(level).Z + even.Rise.Meters;
            int band = Array.FindIndex(shells, b => z <= b.Top + 1e-6);
            PlanCurve outline = shells[band].OutlineAt(z);
            for (int k = 0; k < even.Count; k++)
            {
                double angle = even.FirstAngle.Radians + 2 * Math.PI * k / even.Count;
                Vector3D center = Center(level);
                (Vector3D at, Vector3D normal) = Hit(Points(outline), center, new Vector3D(Math.Cos(angle), Math.Sin(angle), 0));
                // The inward normal turned clockwise by the lay, so that the tower end lies anticlockwise of the skin end.
                double inward = Math.Atan2(-normal.Y, -normal.X) - even.Lay.Radians;
                var run = new Vector3D(Math.Cos(inward), Math.Sin(inward), 0);
                var skinEnd = new Vector3D(at.X, at.Y, z);
                double length = even.Length is { } given2
                    ? Math.Sqrt(given2.Meters * given2.Meters - even.Rise.Meters * even.Rise.Meters)
                    : (Hit(Legs(tower.Levels[level]), skinEnd, run).At - new Vector3D(skinEnd.X, skinEnd.Y, 0)).Length;
                Vector3D towerEnd = skinEnd + length * run - new Vector3D(0, 0, even.Rise.Meters);
                AddBar(towerEnd, skinEnd, normal, even.Standoff, on, places[$"{prefix}band {band + 1}"], FootOf(ring, tower.Levels[level], towerEnd));
            }
        }

        // The nearest point of the sides between the legs.
        (Bracket Bracket, Vector3D Foot)? FootOf(StandoffRing ring, TowerLevel level, Vector3D end)
        {
            if (ring.Bracket is not { } bracket)
                return null;
            Vector3D[] corners = Legs(level);
            Vector3D foot = Enumerable.Range(0, corners.Length)
                .Select(i => Nearest(corners[i], corners[(i + 1) % corners.Length]))
                .MinBy(p => (p.X - end.X) * (p.X - end.X) + (p.Y - end.Y) * (p.Y - end.Y));
            foot = new Vector3D(foot.X, foot.Y, level.Elevation.Meters);
            return (foot - end).Length < 0.02 ? null : (bracket, foot);

            Vector3D Nearest(Vector3D a, Vector3D b) =>
                a + Math.Clamp(((end.X - a.X) * (b.X - a.X) + (end.Y - a.Y) * (b.Y - a.Y)) / ((b.X - a.X) * (b.X - a.X) + (b.Y - a.Y) * (b.Y - a.Y)), 0, 1) * (b - a);
        }

        void AddBar(Vector3D tow, Vector3D end, Vector3D normal, Standoff s, (int Node, Vector3D NodeAt, Vector3D Center) on, (int Node, Vector3D NodeAt, Vector3D Center) band, (Bracket Bracket, Vector3D Foot)? stand)
        {
            (int Node, Vector3D NodeAt, Vector3D Center) level = on;
            if (stand is { } under)
            {
                Vector3D foot = Out(under.Foot), tip = Out(tow), along = (tip - foot).Normalized(), upward = Axis(Vector3D.UnitZ);
                Material m = under.Bracket.Material;
                double stiff(UnitsNet.RotationalStiffness? k) => k?.NewtonMetersPerRadian ?? double.PositiveInfinity;
                double a = under.Bracket.Section.Area.SquareMeters, big = under.Bracket.Section.StrongInertia.MetersToTheFourth, small = under.Bracket.Section.WeakInertia.MetersToTheFourth;
                var beam = new BeamSection
                {
                    EA = m.YoungsModulus.Pascals * a,
                    EIy = m.YoungsModulus.Pascals * big,
                    EIz = m.YoungsModulus.Pascals * small,
                    GJ = m.ShearModulus.Pascals * under.Bracket.Section.TorsionConstant.MetersToTheFourth,
                    GAy = m.ShearModulus.Pascals * under.Bracket.Section.Properties.Asy,
                    GAz = m.ShearModulus.Pascals * under.Bracket.Section.Properties.Asz,
                };
                double turn = under.Bracket.Roll.Radians;
                Vector3D z = (upward - upward.Dot(along) * along).Normalized(), y = z.Cross(along);
                int carrier = builder.AddNode(tip);
                builder.Add(new BeamElement(level.Node, level.NodeAt, carrier, tip, new BeamDefinition(beam)
                {
                    Up = Math.Cos(turn) * z - Math.Sin(turn) * y,
                    StartOffset = foot - level.NodeAt,
                    StartJoint = new BeamJoint { RotationX = stiff(under.Bracket.TowerFixity.Twist), RotationY = stiff(under.Bracket.TowerFixity.StrongAxis), RotationZ = stiff(under.Bracket.TowerFixity.WeakAxis) },
                }));
                Hang(level, m.Density.KilogramsPerCubicMeter * a * (tip - foot).Length, 0.5 * (foot + tip));
                on = (carrier, tip, tip);
            }
            double b = s.Section.Width.Meters, t = s.Section.Thickness.Meters, E = s.Material.YoungsModulus.Pascals, G = s.Material.ShearModulus.Pascals;
            Vector3D x = (end - tow).Normalized();
            bool upright = Math.Abs(x.Z) > 1 - 1e-9;
            Vector3D up = upright ? normal : Vector3D.UnitZ;
            Vector3D width = (up - up.Dot(x) * x).Normalized(), thick = width.Cross(x);
            (double sin, double cos) = Math.SinCos(s.Roll.Radians);
            (width, thick) = (cos * width - sin * thick, cos * thick + sin * width);
            double Spring(UnitsNet.RotationalStiffness? k) => k?.NewtonMetersPerRadian ?? double.PositiveInfinity;
            BeamJoint Fixity(EndFixity f) => new() { RotationX = Spring(f.Twist), RotationY = Spring(f.StrongAxis), RotationZ = Spring(f.WeakAxis) };
            BeamJoint saddle = Fixity(s.SkinFixity);
            if (s.Slide != SaddleSlide.None)
            {
                Vector3D free = s.Slide == SaddleSlide.AlongAxis ? Vector3D.UnitZ : s.Slide == SaddleSlide.AlongSkin ? new Vector3D(-normal.Y, normal.X, 0) : x;
                if (Math.Abs(free.Dot(x)) > 1 - 1e-9)
                    saddle = saddle with { X = 0 };
                else if (Math.Abs(free.Dot(thick)) > 1 - 1e-9)
                    saddle = saddle with { Y = 0 };
                else if (Math.Abs(free.Dot(width)) > 1 - 1e-9)
                    saddle = saddle with { Z = 0 };
                else
                    throw new InvalidOperationException("The reference model can slide along the bar's own axes only.");
            }
            var section = new BeamSection { EA = E * b * t, EIy = E * t * b * b * b / 12, EIz = E * b * t * t * t / 12, GAy = G * b * t * 5 / 6, GAz = G * b * t * 5 / 6, GJ = G * Torsion(b, t) };
            int first = builder.ElementCount, before = on.Node;
            Vector3D beforeAt = on.NodeAt, from = Out(tow), to = Out(end);
            for (int p = 1; p <= Pieces; p++)
            {
                Vector3D at = from + (double)p / Pieces * (to - from);
                int next = p == Pieces ? band.Node : builder.AddNode(at);
                Vector3D nextAt = p == Pieces ? band.NodeAt : at;
                builder.Add(new BeamElement(before, beforeAt, next, nextAt, new BeamDefinition(section)
                {
                    Up = Axis(width),
                    StartOffset = p == 1 ? from - beforeAt : default,
                    EndOffset = p == Pieces ? to - nextAt : default,
                    StartJoint = p == 1 ? Fixity(s.TowerFixity) : BeamJoint.Rigid,
                    EndJoint = p == Pieces ? saddle : BeamJoint.Rigid,
                }));
                (before, beforeAt) = (next, nextAt);
            }
            bars.Add((first, builder.ElementCount - 1));
            double mass = s.Material.Density.KilogramsPerCubicMeter * b * t * (end - tow).Length;
            Hang(level, mass / 2, from);
            Hang(band, mass / 2, to);
        }
    }

    private void Hold(TowerBase held, int node)
    {
        if (held == TowerBase.Fixed)
        {
            builder.Restrain(node, Freedoms.All);
            return;
        }
        double?[] k = [held.X?.NewtonsPerMeter, held.Y?.NewtonsPerMeter, held.Z?.NewtonsPerMeter, held.RotationX?.NewtonMetersPerRadian, held.RotationY?.NewtonMetersPerRadian, held.RotationZ?.NewtonMetersPerRadian];
        var springs = new double[36];
        for (int i = 0; i < 6; i++)
        {
            if (k[i] is { } value)
                springs[7 * i] = value;
            else
                builder.Restrain(node, (Freedoms)(1 << i));
        }
        builder.AddStiffness(node, springs);
    }

    private void AddTube(MemberSegment member, (int Node, Vector3D NodeAt, Vector3D Center) low, (int Node, Vector3D NodeAt, Vector3D Center) high)
    {
        var (bottom, top) = ((Tube)member.Section, (Tube)member.TopSection!);
        double E = member.Material.YoungsModulus.Pascals, G = member.Material.ShearModulus.Pascals, rho = member.Material.Density.KilogramsPerCubicMeter;
        builder.Add(new BeamElement(low.Node, low.NodeAt, high.Node, high.NodeAt, new BeamDefinition(t =>
        {
            double D = bottom.OuterDiameter.Meters + t * (top.OuterDiameter.Meters - bottom.OuterDiameter.Meters);
            double d = D - 2 * (bottom.Wall.Meters + t * (top.Wall.Meters - bottom.Wall.Meters));
            return Round(D, d, E, G, rho);
        })
        { StartOffset = low.Center - low.NodeAt, EndOffset = high.Center - high.NodeAt }));
    }

    /// <summary>A tube; shear by Cowper's formula for ν = 0.3, written with the radii's ratio.</summary>
    private static BeamSection Round(double D, double d, double E, double G, double rho)
    {
        double A = Math.PI / 4 * (D * D - d * d), I = Math.PI / 64 * (Math.Pow(D, 4) - Math.Pow(d, 4)), m = d / D, q = Math.Pow(1 + m * m, 2);
        double As = A * 7.8 * q / (8.8 * q + 23.6 * m * m);
        return new BeamSection { EA = E * A, EIy = E * I, EIz = E * I, GJ = G * 2 * I, GAy = G * As, GAz = G * As, Mass = rho * A, RotaryY = rho * I, RotaryZ = rho * I };
    }

    private void AddPanel(
        LatticeSegment panel, TowerLevel bottom, TowerLevel top, (int Node, Vector3D NodeAt, Vector3D Center) low, (int Node, Vector3D NodeAt, Vector3D Center) high, Func<Vector3D, Vector3D> toGlobal)
    {
        if (panel.Bays != 1)
            throw new InvalidOperationException("The reference model knows one-bay panels only.");
        Vector3D[] feet = [.. Legs(bottom).Select(p => toGlobal(new Vector3D(p.X, p.Y, bottom.Elevation.Meters)))];
        Vector3D[] heads = [.. Legs(top).Select(p => toGlobal(new Vector3D(p.X, p.Y, top.Elevation.Meters)))];
        double E = panel.Material.YoungsModulus.Pascals, G = panel.Material.ShearModulus.Pascals, rho = panel.Material.Density.KilogramsPerCubicMeter;
        double extra = 1 + panel.ConnectionMassFraction;
        var tube = (Tube)panel.Legs;
        double D = tube.OuterDiameter.Meters;
        BeamSection leg = Round(D, D - 2 * tube.Wall.Meters, E, G, rho);
        leg = leg with { Mass = extra * leg.Mass };
        var angle = (AngleBar)panel.Braces;
        double t = angle.Thickness.Meters, A = t * (angle.LongLeg.Meters + angle.ShortLeg.Meters - t);
        void Brace(Vector3D foot, Vector3D head) =>
            builder.Add(new BarElement(low.Node, low.NodeAt, high.Node, high.NodeAt, E * A, extra * rho * A, foot - low.NodeAt, head - high.NodeAt));
        for (int i = 0; i < feet.Length; i++)
        {
            int j = (i + 1) % feet.Length;
            builder.Add(new BeamElement(low.Node, low.NodeAt, high.Node, high.NodeAt, new BeamDefinition(leg) { StartOffset = feet[i] - low.NodeAt, EndOffset = heads[i] - high.NodeAt }));
            switch (panel.Bracing)
            {
                case Bracing.KBrace:
                    Brace(feet[i], 0.5 * (heads[i] + heads[j]));
                    Brace(feet[j], 0.5 * (heads[i] + heads[j]));
                    break;
                case Bracing.Cross:
                    Brace(feet[i], heads[j]);
                    Brace(feet[j], heads[i]);
                    break;
                default:
                    Brace(i % 2 == 0 ? feet[i] : feet[j], i % 2 == 0 ? heads[j] : heads[i]);
                    break;
            }
        }
    }

    private void AddSeam(SeamStiffness seams, SkinBand upper, (int Node, Vector3D NodeAt, Vector3D Center) low, (int Node, Vector3D NodeAt, Vector3D Center) high, Vector3D[] e, Func<Vector3D, Vector3D> toGlobal)
    {
        Vector3D[] edge = Points(upper.BottomOutline);
        for (int i = 0; i < edge.Length; i++)
        {
            Vector3D next = edge[(i + 1) % edge.Length], mid = 0.5 * (edge[i] + next), at = toGlobal(new Vector3D(mid.X, mid.Y, upper.Bottom));
            double length = (next - edge[i]).Length;
            var relative = Dense.Zero(3, 12);
            relative.SetSubMatrix(0, 0, -Dense.Arm(at - low.NodeAt).SubMatrix(0, 3, 0, 6));
            relative.SetSubMatrix(0, 6, Dense.Arm(at - high.NodeAt).SubMatrix(0, 3, 0, 6));
            var along = Dense.Vector(e[2]);
            var k = length * seams.Along.Pascals * MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.DenseIdentity(3)
                + length * (seams.Across.Pascals - seams.Along.Pascals) * along.OuterProduct(along);
            builder.Add(new MatrixElement(low.Node, high.Node, relative.TransposeThisAndMultiply(k * relative).ToRowMajorArray()));
        }
    }

    private static Vector3D[] Legs(TowerLevel level)
    {
        var plan = (PolygonPlan)level.Plan!;
        return [.. Enumerable.Range(0, plan.LegCount).Select(i => plan.FirstLeg.Radians + 2 * Math.PI * i / plan.LegCount).Select(a => new Vector3D(
            level.OffsetX.Meters + 0.5 * plan.Diameter.Meters * Math.Cos(a), level.OffsetY.Meters + 0.5 * plan.Diameter.Meters * Math.Sin(a), 0))];
    }

    private static Vector3D[] Points(PlanCurve curve) => [.. curve.X.ToArray().Zip(curve.Y.ToArray(), (x, y) => new Vector3D(x, y, 0))];

    private static Vector3D Meters(Point3 p) => new(p.X.Meters, p.Y.Meters, p.Z.Meters);

    /// <summary>Where a ray in plan leaves through a polygon first, and the right-hand normal of that edge.</summary>
    private static (Vector3D At, Vector3D Normal) Hit(Vector3D[] polygon, Vector3D from, Vector3D ray)
    {
        var best = (Distance: double.PositiveInfinity, Normal: default(Vector3D));
        for (int i = 0; i < polygon.Length; i++)
        {
            Vector3D a = polygon[i], d = polygon[(i + 1) % polygon.Length] - a;
            double det = ray.X * -d.Y + d.X * ray.Y;
            if (det == 0)
                continue;
            double s = ((a.X - from.X) * -d.Y + d.X * (a.Y - from.Y)) / det, w = (ray.X * (a.Y - from.Y) - ray.Y * (a.X - from.X)) / det;
            if (s >= 0 && w >= -1e-12 && w <= 1 + 1e-12 && s < best.Distance)
            {
                int n = polygon.Length;
                double own = Angle(d), before = Bend(polygon[i] - polygon[(i + n - 1) % n], d), after = Bend(d, polygon[(i + 2) % n] - polygon[(i + 1) % n]);
                // The normal of a smooth outline is the mean of two edges' at a vertex, and linear in between.
                double angle = own - Math.PI / 2 + (1 - w) * -before / 2 + w * after / 2;
                best = (s, new Vector3D(Math.Cos(angle), Math.Sin(angle), 0));
            }
        }
        return (new Vector3D(from.X, from.Y, 0) + best.Distance * ray, best.Normal);
    }

    private static double Angle(Vector3D v) => Math.Atan2(v.Y, v.X);

    private static double Bend(Vector3D from, Vector3D to)
    {
        double bend = Math.IEEERemainder(Angle(to) - Angle(from), 2 * Math.PI);
        return Math.Abs(bend) < Math.PI / 9 ? bend : 0;
    }

    /// <summary>The outward normal of the outline's edge nearest to a point, for bars that stand upright.</summary>
    private static Vector3D RadialOf(Skin skin, Vector3D p)
    {
        Vector3D[] outline = Points(Array.Find(BandBuilder.Bands(skin), b => MeanSkinEnd <= b.Top)!.OutlineAt(MeanSkinEnd));
        (double Gap, Vector3D Normal) best = (double.PositiveInfinity, default);
        for (int i = 0; i < outline.Length; i++)
        {
            Vector3D a = outline[i], d = outline[(i + 1) % outline.Length] - a;
            double w = Math.Clamp(((p.X - a.X) * d.X + (p.Y - a.Y) * d.Y) / (d.X * d.X + d.Y * d.Y), 0, 1);
            double gap = Math.Pow(a.X + w * d.X - p.X, 2) + Math.Pow(a.Y + w * d.Y - p.Y, 2);
            if (gap < best.Gap)
                best = (gap, new Vector3D(d.Y, -d.X, 0).Normalized());
        }
        return best.Normal;
    }

    /// <summary>Mean height of the sample's explicit ring.</summary>
    private const double MeanSkinEnd = (8.6 + 8.7 + 9.3 + 9.2) / 4;

    private static InertiaTensor Turned(InertiaTensor i, Vector3D[] e)
    {
        double Entry(int a, int b)
        {
            double[] p = [At(e[0], a), At(e[1], a), At(e[2], a)], q = [At(e[0], b), At(e[1], b), At(e[2], b)];
            double[,] local = { { i.XX, i.XY, i.XZ }, { i.XY, i.YY, i.YZ }, { i.XZ, i.YZ, i.ZZ } };
            double sum = 0;
            for (int r = 0; r < 3; r++)
            {
                for (int c = 0; c < 3; c++)
                    sum += p[r] * local[r, c] * q[c];
            }
            return sum;
        }
        return new InertiaTensor(Entry(0, 0), Entry(1, 1), Entry(2, 2), Entry(0, 1), Entry(0, 2), Entry(1, 2));

        static double At(Vector3D v, int i) => i == 0 ? v.X : i == 1 ? v.Y : v.Z;
    }

    /// <summary>St. Venant's series for the rectangle, summed plainly.</summary>
    private static double Torsion(double b, double t)
    {
        double sum = 0;
        for (int n = 1; n < 4001; n += 2)
            sum += Math.Tanh(n * Math.PI * b / (2 * t)) / Math.Pow(n, 5);
        return b * t * t * t * (1.0 / 3 - 64 * t / (Math.Pow(Math.PI, 5) * b) * sum);
    }
}
