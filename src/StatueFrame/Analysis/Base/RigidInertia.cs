using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Analysis;

/// <summary>The inertia of a whole statue as one rigid body, mass on held freedoms included.</summary>
internal static class RigidInertia
{
    /// <summary>Inertia about an axis (a unit vector) through a point, kg·m².</summary>
    public static double Of(StatueModel model, Vector3D axis, Vector3D about)
    {
        double sum = 0;
        Span<double> m = stackalloc double[FrameElement.Size * FrameElement.Size], u = stackalloc double[FrameElement.Size];
        foreach (FrameElement element in model.Frame.Elements.Cast<FrameElement>())
        {
            m.Clear();
            element.AddMass(m);
            Turn(model.Frame.Nodes[element.Start].Position, u);
            Turn(model.Frame.Nodes[element.End].Position, u[Frame.NodeSize..]);
            for (int i = 0; i < FrameElement.Size; i++)
            {
                for (int j = 0; j < FrameElement.Size; j++)
                    sum += u[i] * m[i * FrameElement.Size + j] * u[j];
            }
        }
        Span<double> body = stackalloc double[Frame.NodeSize * Frame.NodeSize];
        foreach (BodyModel part in model.Bodies)
        {
            Vector3D local = part.Axes.Axes.ToLocal(axis);
            foreach ((SkinBand band, Place place) in part.Bands.Zip(part.BandPlaces))
            {
                body.Clear();
                new PointMass(0, band.Mass, Vector3D.Zero, band.Inertia).AddMass(body);
                double[] n = [local.X, local.Y, local.Z];
                for (int i = 0; i < 3; i++)
                {
                    for (int j = 0; j < 3; j++)
                        sum += n[i] * body[(i + 3) * Frame.NodeSize + j + 3] * n[j];
                }
                AddPoint(band.Mass, place.Center);
            }
            foreach ((_, double mass, Vector3D at) in part.FrameMasses)
                AddPoint(mass, at);
            foreach (SegmentModel segment in part.Segments)
                AddPoint(segment.JointMass, segment.Lower.Center);
            foreach (PlacedBracket bracket in part.Rings.SelectMany(ring => ring.Brackets))
                AddPoint(bracket.Mass, bracket.Middle);
            foreach (BarModel bar in part.Rings.SelectMany(ring => ring.Bars))
            {
                AddPoint(0.5 * bar.Mass, bar.Bar.Place.TowerEnd);
                AddPoint(0.5 * bar.Mass, bar.Bar.Place.SkinEnd);
            }
        }
        foreach (Fitting fitting in model.Statue.Fittings)
            AddPoint(fitting.Mass.Kilograms, fitting.At?.Meters ?? model.PlaceOf(fitting.On).Center);
        return sum;

        void AddPoint(double mass, Vector3D at)
        {
            Vector3D v = axis.Cross(at - about);
            sum += mass * v.Dot(v);
        }

        void Turn(Vector3D at, Span<double> node)
        {
            Vector3D v = axis.Cross(at - about);
            (node[0], node[1], node[2], node[3], node[4], node[5]) = (v.X, v.Y, v.Z, axis.X, axis.Y, axis.Z);
        }
    }
}
