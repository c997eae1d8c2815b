namespace StatueFrame.Tests.Validation;

public class StatueNamesTests
{
    private static readonly StatueNames names = new(SmallStatue.Good.Statue);

    [Theory]
    [InlineData("base")]
    [InlineData("band 2")]
    [InlineData("arm/hand")]
    [InlineData("arm/band 1")]
    public void Levels_and_bands_of_trunk_and_limbs_have_names(string name) => Assert.True(names.Has(name));

    [Theory]
    [InlineData("tip")]
    [InlineData("band 0")]
    [InlineData("band 3")]
    [InlineData("arm")]
    [InlineData("hand")]
    [InlineData("Base")]
    [InlineData(null)]
    public void Other_names_are_unknown(string? name) => Assert.False(names.Has(name));

    [Theory]
    [InlineData("bas", "Did you mean \"base\"?")]
    [InlineData("BASE", "Did you mean \"base\"?")]
    [InlineData("band 9", "Did you mean \"band 1\"?")]
    [InlineData("arm/band1", "Did you mean \"arm/band 1\"?")]
    [InlineData("quite another thing", "There are \"base\", \"mid\", \"top\", \"band 1\", \"band 2\", \"arm/root\" and others.")]
    public void Closest_name_is_suggested(string wrong, string hint) => Assert.Equal(hint, names.Suggest(wrong));

    [Fact]
    public void Nothing_is_suggested_when_there_is_nothing() => Assert.Equal("There are none.", NearNames.Closest("x", []));

    [Theory]
    [InlineData("band 1", 1)]
    [InlineData("band 12", 12)]
    [InlineData("band 0", null)]
    [InlineData("band -1", null)]
    [InlineData("band", null)]
    [InlineData("band x", null)]
    [InlineData("headband 1", null)]
    public void Band_names_give_the_number_of_the_band(string name, int? band) => Assert.Equal(band, StatueNames.BandOf(name));

    [Fact]
    public void Bands_are_counted_from_one()
    {
        Assert.Equal("band 1", StatueNames.OfBand(0));
        Assert.Equal(7, StatueNames.BandOf(StatueNames.OfBand(6)));
    }
}
