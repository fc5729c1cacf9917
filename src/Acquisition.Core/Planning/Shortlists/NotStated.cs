using System;

namespace Acquisition.Core.Planning;

/// <summary>What a judgement would have needed and the catalogue does not state.</summary>
[Flags]
internal enum NotStated
{
    Nothing = 0,
    Rating = 1,
    RatingToEarth = 2,
    Offset = 4,
    Noise = 8,
    Jitter = 16,
    TimebaseAccuracy = 32,
}
