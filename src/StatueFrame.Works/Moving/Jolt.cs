namespace StatueFrame.Works;

/// <summary>One direction of a <see cref="Journey"/>.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Direction">Which way, as in "forward".</param>
/// <param name="Level">Level acceleration over g, c_x or c_y.</param>
/// <param name="Down">What is left of the weight meanwhile, over the weight, c_z.</param>
/// <param name="Safety">Safety factor f_s of friction lashing in that direction.</param>
public sealed record Jolt(string Direction, double Level, double Down, double Safety);
