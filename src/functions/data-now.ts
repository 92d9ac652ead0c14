/** Provides every large table at once, for hosts that read them from this machine's disk anyway. Imported for what it does. */
import { COUNTY_ZONES } from "../core/tables/enclosure-counties.ts";
import { STATIONS } from "../core/tables/enclosure-stations.ts";
import { provideTable } from "../core/tables/late.ts";

provideTable("climate stations", STATIONS);
provideTable("county zones", COUNTY_ZONES);
