using System.Text;

namespace StatueFrame.Fuzz;

/// <summary>Files of statues.</summary>
/// <param name="small">Files whose sheet is made in a blink.</param>
/// <param name="whole">Files in which everything acts, tried one time of twelve.</param>
internal sealed class Descriptions(string[] small, string[] whole) : Subject
{
    public override string Name => "descriptions";

    public override int Weight => 12;

    public override IEnumerable<byte[]> SoundOnes() => small.Concat(whole).Select(Encoding.UTF8.GetBytes);

    public override byte[] Spoiled(Random random)
    {
        string[] corpus = random.Next(12) == 0 ? whole : small;
        string text = corpus[random.Next(corpus.Length)];
        return random.Next(16) == 0 ? Bytes(Encoding.UTF8.GetBytes(text), random) : Encoding.UTF8.GetBytes(new Spoiler(random).Spoil(text));
    }

    public override string? Judge(byte[] spoiled, int number, out bool taken) => Fuzz.Judge.Of(Encoding.UTF8.GetString(spoiled), number, out taken);
}
