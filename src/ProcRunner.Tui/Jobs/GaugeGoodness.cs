using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Trail;

namespace ProcRunner.Tui.Jobs;

/// <summary>Since when readings of a gauge are in doubt, when it turns out bad today.</summary>
internal static class GaugeGoodness
{
    /// <summary>
    /// When the shop book last says that the gauge was known good: when it came into use, or when its calibration was last
    /// carried further; null when the book doesn't know the gauge.
    /// </summary>
    public static DateTimeOffset? LastKnownGood(StoreReader reader, string gauge)
    {
        DateTimeOffset? good = null;
        DateOnly? until = null;
        foreach ((TrailEntry entry, _) in reader.ReadTrail(JobId.Shop).Entries)
        {
            foreach (Json.Map map in entry.Events)
            {
                Gauge? told = ShopEventFormat.Read(map) switch
                {
                    ShopEvent.GaugeAdded e => e.Gauge,
                    ShopEvent.GaugeChanged e => e.Gauge,
                    _ => null,
                };
                if (told?.Id != gauge)
                {
                    continue;
                }

                good = good is null || told.CalibratedUntil > until ? entry.At : good;
                until = told.CalibratedUntil;
            }
        }

        return good;
    }
}
