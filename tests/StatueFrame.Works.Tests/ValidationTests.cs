namespace StatueFrame.Works.Tests;

public class ValidationTests
{
    public static IEnumerable<TheoryDataRow<int>> RowNumbers =>
        ValidationPage.RowsOf(typeof(ValidationTests).Assembly)
            .Select((r, i) => new TheoryDataRow<int>(i) { TestDisplayName = r.Row.ToString() });

    [Theory, MemberData(nameof(RowNumbers))]
    public void Matches_the_published_value(int row) =>
        ValidationPage.Check(ValidationPage.RowsOf(typeof(ValidationTests).Assembly)[row].Row);

    [Fact]
    public void Validation_page_is_up_to_date() => ValidationPage.AssertUpToDate(typeof(ValidationTests).Assembly);
}
