using StatueFrame.Analysis;

namespace StatueFrame.Reporting.Tests;

public class PackageForcesTests
{
    private static readonly string html = Study.Package().ToHtml();

    private static readonly Response storm = StatueModel.Build(Study.Heron()).Respond(Study.Situations[0]);

    [Fact]
    public void The_wind_of_every_band_is_the_product_that_is_printed()
    {
        foreach (LoadCase loadCase in storm.Cases)
        {
            foreach (BandWindForce b in loadCase.BandWindForces())
            {
                double product = b.LoadFactor * b.GustFactor * b.PeakPressure.Pascals * b.Coefficient * b.Area.SquareMeters;
                Assert.Equal(product, b.Along.Newtons, 1e-9 * product);
            }
        }
    }

    [Fact]
    public void The_package_traces_the_wind_from_the_bands_to_the_ground()
    {
        LoadCase worst = storm.OverturningGoverns;
        foreach (BandWindForce b in worst.BandWindForces())
            Assert.Contains(Text(b.Along.Newtons, Dimension.Force), html);
        Assert.Contains(Text(worst.WindForce.Newtons, Dimension.Force), html);
        Assert.Contains(Text(worst.Base.Overturning.NewtonMeters, Dimension.Moment), html);
        foreach (SegmentForces s in worst.Segments())
            Assert.Contains(Text(s.Bottom.Axial.Newtons, Dimension.Force), html);
        foreach (string section in (string[])["wind", "equilibrium", "forces"])
            Assert.Contains($"<section id=\"{section}\"", html);
    }

    [Fact]
    public void Weight_and_wind_in_the_table_are_what_the_base_feels()
    {
        LoadCase worst = storm.OverturningGoverns;
        double weight = 1.35 * storm.Model.Masses.Total.Kilograms * 9.80665;
        Assert.Equal(-weight, worst.Base.ForceZ.Newtons, 1e-6 * weight);
        Assert.Contains(Text(weight, Dimension.Force), html);
        Assert.Equal(worst.WindForce.Newtons, worst.Base.Shear.Newtons, 1e-6 * worst.WindForce.Newtons);
    }

    [Fact]
    public void A_statue_in_calm_has_no_wind_to_tell()
    {
        var calm = CalculationPackage.Of(Study.Heron(), new Criteria(), new Situation { Name = "calm", Actions = [new SelfWeight()] });
        Assert.Contains("No wind acts", calm.ToHtml());
    }

    private static string Text(double si, Dimension dimension) => dimension.Format(si, DisplayUnits.Metric).Replace('-', '−');
}
