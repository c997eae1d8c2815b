namespace StatueFrame.Checks;

/// <summary>A standoff as its checks need it, in SI units, with the rules it is checked by. What costs most is worked out once.</summary>
/// <remarks>For one thread.</remarks>
internal sealed class CheckedBar
{
    private const int Axes = 2;

    private readonly EndSprings tower, skin;
    private readonly double[] factors = new double[Axes * (int)(BarRestraint.Free + 1)];
    private double wide, narrow;

    private readonly Material? joinedAtTower;

    /// <param name="standoff">What it is made of.</param>
    /// <param name="L">Length, m.</param>
    /// <param name="design">The rules it is checked by.</param>
    /// <param name="where">Its name.</param>
    /// <param name="initialBow">Bow beside the imperfection of its curve, m.</param>
    /// <param name="joinedAtTower">The metal of the tower there; null when not known.</param>
    /// <param name="towerSprings">Springs of the tower end with what it stands on; null takes its own fixity.</param>
    public CheckedBar(Standoff standoff, double L, BarDesign design, string where, double initialBow = 0, Material? joinedAtTower = null, EndSprings? towerSprings = null)
    {
        this.joinedAtTower = joinedAtTower;
        (Standoff, this.L, Design, Where, InitialBow) = (standoff, L, design, where, initialBow);
        (b, t) = standoff.Rectangle;
        (tower, skin) = (towerSprings ?? standoff.TowerFixity.Springs, standoff.SkinFixity.Springs);
        Material m = standoff.Material.For(t);
        (E, G) = (m.YoungsModulus.Pascals, m.ShearModulus.Pascals);
        (f_y, f_u) = (m.YieldStrength.Pascals, m.UltimateStrength.Pascals);
    }

    public Standoff Standoff { get; }

    /// <summary>Where it is in the model: number of its ring and its index there, and whether its saddle slides; null in a script.</summary>
    public (int Ring, int Index, bool Slides)? Site { get; init; }

    public BarDesign Design { get; }

    public string Where { get; }

    public double InitialBow { get; }

    public double b { get; }

    public double t { get; }

    public double L { get; }

    public double E { get; }

    public double G { get; }

    public double f_y { get; }

    public double f_u { get; }

    /// <summary>Torsion modulus at the middle of the wide faces, m³.</summary>
    public double WideTorsionW => wide > 0 ? wide : wide = Standoff.Rectangle.TorsionW;

    /// <summary>Torsion modulus at the middle of the narrow faces, m³.</summary>
    public double NarrowTorsionW => narrow > 0 ? narrow : narrow = FlatStresses.NarrowTorsionW(b, t);

    /// <summary>
    /// Effective length factor about one axis; +∞ for a mechanism. A bar that is free at its skin end and hinged to the tower
    /// stands on its saddle.
    /// </summary>
    public double EffectiveLengthFactor(bool weak, BarRestraint restraint)
    {
        ref double known = ref factors[Axes * (int)restraint + (weak ? 0 : 1)];
        if (known > 0)
            return known;
        double scale = L / (E * (weak ? b * t * t * t / 12 : t * b * b * b / 12));
        double atTower = (weak ? tower.Weak : tower.Strong) * scale, atSkin = (weak ? skin.Weak : skin.Strong) * scale;
        bool standsOnTower = restraint == BarRestraint.Free && atTower > 0;
        return known = EffectiveLength.Factor(atTower, standsOnTower ? 0 : atSkin, restraint != BarRestraint.Held);
    }

    /// <summary>Ultimate strength of the weaker of the parts that the fixing of an end joins, Pa.</summary>
    public double JoinedStrength(bool atSkin)
    {
        Material? other = (Fixing(atSkin) as WeldedFixing)?.JoinedTo ?? (atSkin ? null : joinedAtTower);
        return Math.Min(f_u, other?.UltimateStrength.Pascals ?? f_u);
    }

    public StandoffFixing? Fixing(bool atSkin) => atSkin ? Standoff.SkinFixing : Standoff.TowerFixing;
}
