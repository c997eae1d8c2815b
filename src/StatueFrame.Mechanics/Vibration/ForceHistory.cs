namespace StatueFrame.Mechanics.Vibration;

/// <summary>Loads that keep their pattern while their size changes with time: f(t) = pattern · s(t), s straight between samples.</summary>
/// <remarks>Safe to share between threads; its arrays must not be written to.</remarks>
/// <param name="Pattern">A full vector; N, N·m for samples without unit.</param>
/// <param name="Samples">s at 0, h, 2h, …; afterwards zero.</param>
public sealed record ForceHistory(double[] Pattern, double[] Samples)
{
    /// <summary>
    /// The loads that shake a frame as its base accelerates: −M ι a(t). The response is then relative to the base.
    /// </summary>
    /// <param name="frame">The frame.</param>
    /// <param name="direction">0, 1, 2: displacement along x, y, z; 3, 4, 5: rotation about x, y, z.</param>
    /// <param name="accelerations">a at 0, h, 2h, …; m/s² or rad/s².</param>
    /// <param name="about">The point about which a rotation turns, m.</param>
    public static ForceHistory BaseAcceleration(Frame frame, int direction, double[] accelerations, Vector3D about = default)
    {
        double[] pattern = frame.InertiaForces(frame.RigidMotion(direction, about));
        Statics.DenseVector.Scale(pattern, -1);
        return new ForceHistory(pattern, accelerations);
    }
}
