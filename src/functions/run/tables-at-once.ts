/** Provides every large table at once, for hosts that read them from this machine's disk anyway. Imported for what it does. */
import { COUNTY_ZONES } from "../../core/enclosure/tables/counties.ts";
import { STATIONS } from "../../core/enclosure/tables/stations.ts";
import { provideTable } from "../../core/kit/late-tables.ts";

provideTable("climate stations", STATIONS);
provideTable("county zones", COUNTY_ZONES);
