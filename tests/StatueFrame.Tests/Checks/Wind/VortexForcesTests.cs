using StatueFrame.Analysis;
using StatueFrame.Checks;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;
using StatueFrame.Tests.Analysis.Gusts;
using UnitsNet;

namespace StatueFrame.Tests.Checks;

/// <summary>Vortices reach every part as a force.</summary>
public class VortexForcesTests
{
    private static readonly Statue tower = OnTube(GustStatues.Uniform(40, 2, 1.2, mass: 300, bands: 10));

    private static Statue OnTube(Statue statue) => statue with
    {
        Tower = statue.Tower with { Segments = [.. statue.Tower.Segments.Select(_ => new MemberSegment { Section = new Tube(0.8.Meters, 16.Millimeters), Material = StructuralSteel.S355 })] },
    };

    private static readonly StatueModel model = StatueModel.Build(tower);

    private static readonly WindAction wind = GustStatues.Action(GustStatues.Wind(15));

    private static readonly Situation storm = new() { Name = "storm", Actions = [1.35 * new SelfWeight(), 1.5 * wind] };

    private static Criteria With(double ratio, double lateral = 0.2) => new()
    {
        Damping = DampingModel.OfRatio(ratio),
        AcrossWind = new AcrossWindInput { Sections = [new BodySection("trunk", BluffShape.Round) { Section = BluffSection.Given(0.18, lateral, 0) }], AmplitudeLimit = 1.Meters },
    };

    private static (ModalResponse Modes, AcrossWindReport Report, ShakingWind[] Shaking) Find(Criteria criteria)
    {
        ModalResponse modes = model.Modes(20);
        AcrossWindReport report = AcrossWind.Of(model, modes, wind, criteria.AcrossWind! with { Damping = criteria.Damping }, "storm");
        return (modes, report, [.. VortexForces.Of(model, storm, modes, report)]);
    }

    /// <summary>F = m (2πn)² y, summed element by element and body by body, those on held nodes too, is what comes down at the base.</summary>
    [Fact]
    public void The_base_bears_the_inertia_of_all_masses()
    {
        (ModalResponse modes, AcrossWindReport report, ShakingWind[] shaking) = Find(With(0.003));
        Assert.NotEmpty(shaking);
        foreach (ShakingWind one in shaking)
        {
            int mode = int.Parse(one.What.Split(' ')[^1], System.Globalization.CultureInfo.InvariantCulture);
            AcrossWindCase worst = report.Cases.Where(c => c.Mode.Number == mode).MaxBy(c => c.GreatestDisplacement.Meters)!;
            double q = worst.ModalAmplitude(model, modes.Set), w2 = Math.Pow(2 * Math.PI * worst.Mode.Frequency.Hertz, 2);
            double[] acceleration = [.. modes.Set.Shape(mode - 1).ToArray().Select(u => q * w2 * u)];
            double x = 0, y = 0;
            foreach (FiniteElement element in model.Frame.Elements)
            {
                var mass = new double[element.FreedomCount * element.FreedomCount];
                element.AddMass(mass);
                Add(mass, element.Nodes.ToArray());
            }
            for (int node = 0; node < model.NodeMasses.Length; node++)
                Add(model.NodeMasses[node], [node]);
            Assert.Equal(double.Hypot(x, y), one.Peaks.OnBase.Shear, 1e-6 * one.Peaks.OnBase.Shear);

            void Add(double[] mass, int[] nodes)
            {
                int size = nodes.Length * Frame.NodeSize;
                for (int i = 0; i < size; i++)
                {
                    for (int j = 0; j < size; j++)
                    {
                        double force = mass[i * size + j] * acceleration[nodes[j / Frame.NodeSize] * Frame.NodeSize + j % Frame.NodeSize];
                        (x, y) = (x + (i % Frame.NodeSize == 0 ? force : 0), y + (i % Frame.NodeSize == 1 ? force : 0));
                    }
                }
            }
            Assert.Equal(1.5, one.Factor);
        }
    }

    /// <summary>
    /// F_w = m (2πn)² y (E.6), band by band, from the bands' masses and the movement of the frame with the amplitude that is used.
    /// The standard's amplitude is at the very top; here the middle of a band has it, which is the same few percent more for all.
    /// </summary>
    [Fact]
    public void The_inertia_of_each_band_is_that_of_the_standard()
    {
        (ModalResponse modes, AcrossWindReport report, _) = Find(With(0.003));
        int compared = 0;
        foreach (AcrossWindCase found in report.Cases.Where(c => c.GreatestDisplacement.Millimeters > 1))
        {
            double q = found.ModalAmplitude(model, modes.Set), w2 = Math.Pow(2 * Math.PI * found.Mode.Frequency.Hertz, 2), heading = found.VortexHeading.Radians;
            var lift = new Vector3D(-Math.Sin(heading), Math.Cos(heading), 0);
            BodyModel body = model.Bodies[0];
            var ratios = new List<double>();
            for (int i = 0; i < body.Bands.Length; i++)
            {
                double y = q * model.Motion(modes.Set.Shape(found.Mode.Number - 1), body.BandPlaces[i], body.BandPlaces[i].Center).Displacement.Dot(lift);
                double standard = found.Vortex.InertiaForces[i].NewtonsPerMeter * found.Input.Strips[i].Length.Meters;
                ratios.Add(body.Bands[i].Mass * w2 * Math.Abs(y) / Math.Abs(standard));
                compared++;
            }
            Assert.All(ratios, ratio => Assert.Equal(ratios[0], ratio, 1e-6));
            Assert.InRange(ratios[0], 1, 1.1);
        }
        Assert.True(compared >= 10);
    }

    [Fact]
    public void Parts_are_checked_under_vortices()
    {
        CheckSheet sheet = tower.Check(With(0.001), storm);
        Assert.Contains(sheet.Checks, c => c.Id is "tower.bending" or "bars.bending" && c.Where.Contains("vortices in mode", StringComparison.Ordinal));
        Assert.Contains(sheet.Assumptions, a => a.Subject == VortexForces.Basis.Subject);
        Assert.DoesNotContain(tower.Check(new Criteria { Damping = DampingModel.OfRatio(0.001) }, storm).Assumptions, a => a.Subject == VortexForces.Basis.Subject);
    }

    /// <summary>Less damping and stronger vortices never help; with hardly any they change nothing.</summary>
    [Fact]
    public void Stronger_vortices_never_help()
    {
        Dictionary<(string, string), double> none = Worst(With(0.05, 1e-6)), some = Worst(With(0.004)), many = Worst(With(0.001));
        Dictionary<(string, string), double> without = Worst(new Criteria { Damping = DampingModel.OfRatio(0.05) });
        foreach (((string, string) key, double value) in none)
        {
            Assert.Equal(without[key], value, 1e-9);
            Assert.True(some[key] >= value * (1 - 1e-9) && many[key] >= some[key] * (1 - 1e-9), $"{key}");
        }
        Assert.Contains(none, entry => many[entry.Key] > 1.05 * entry.Value);

        static Dictionary<(string, string), double> Worst(Criteria criteria) => tower.Check(criteria, storm).Checks
            .Where(c => c.Utilization is not null && c.Family is "bars" or "base" or "tower").GroupBy(c => (c.Id, c.Subject.Part)).ToDictionary(g => g.Key, g => g.Max(c => c.Utilization!.Value));
    }

    /// <summary>A map wind of ASCE 7 counts once in strength, but the common wind that sheds vortices counts 1.6 times.</summary>
    [Fact]
    public void A_wind_for_strength_does_not_take_the_factor_off_vortices()
    {
        ModalResponse modes = model.Modes(20);
        Situation american = storm with { Actions = [1.2 * new SelfWeight(), wind with { Profile = new AsceWind { Edition = AsceEdition.Asce7_22, BasicSpeed = 45.MetersPerSecond, Exposure = AsceExposure.C } }] };
        var action = (WindAction)american.Wind!.Action;
        AcrossWindReport report = AcrossWind.Of(model, modes, action, With(0.003).AcrossWind! with { Damping = DampingModel.OfRatio(0.003) }, "storm");
        ShakingWind[] shaking = [.. VortexForces.Of(model, american, modes, report)];
        Assert.NotEmpty(shaking);
        Assert.All(shaking, shaken => Assert.Equal((1.6, 1.6), (shaken.Factor, shaken.Still.Wind!.Factor)));
    }
}
