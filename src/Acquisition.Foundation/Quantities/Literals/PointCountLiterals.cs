namespace Acquisition.Core.Literals;

/// <summary>Point count literals: <c>14.kpts()</c>.</summary>
public static class PointCountLiterals
{
    /// <summary>A number of points.</summary>
    public static PointCount pts(this int value) => PointCount.FromPoints(value);

    /// <summary>A number of points.</summary>
    public static PointCount pts(this long value) => PointCount.FromPoints(value);

    /// <summary>A value in kpts.</summary>
    public static PointCount kpts(this double value) => PointCount.FromKilopoints(value);

    /// <summary>A value in kpts.</summary>
    public static PointCount kpts(this int value) => PointCount.FromKilopoints(value);

    /// <summary>A value in Mpts.</summary>
    public static PointCount Mpts(this double value) => PointCount.FromMegapoints(value);

    /// <summary>A value in Mpts.</summary>
    public static PointCount Mpts(this int value) => PointCount.FromMegapoints(value);

    /// <summary>A value in Gpts.</summary>
    public static PointCount Gpts(this double value) => PointCount.FromGigapoints(value);

    /// <summary>A value in Gpts.</summary>
    public static PointCount Gpts(this int value) => PointCount.FromGigapoints(value);
}
