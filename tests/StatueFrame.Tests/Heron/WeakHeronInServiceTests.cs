namespace StatueFrame.Tests.Heron;

/// <summary>Herons that are weak in service, in heat, in an earthquake or a pressure wave.</summary>
public class WeakHeronInServiceTests
{
    [Theory]
    [MemberData(nameof(WeakHeronTests.Otherwise), MemberType = typeof(WeakHeronTests))]
    public void A_weak_heron_fails_in_the_check_that_looks_at_what_is_weak(string thing) => WeakHeronTests.Fails(thing);
}
