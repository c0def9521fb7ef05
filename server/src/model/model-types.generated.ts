// Generated from schemas/ by server/tools/generate-model.mjs. Edit the schemas, then run `npm run generate`.
import type { QuantityName } from '../quantity/quantities.ts';
import type { Quantity, QuantityRange } from '../quantity/quantity.ts';
import type { AirTemperatureSource } from './air-temperature-source.ts';
import type { Located } from './located.ts';

/** `YYYY-MM-DD`, a day that exists. */
export type CalendarDate = string;

/**
 * One site: its spaces, its humidity measurement points, and how each point is heated, supplied, mounted, reported and
 * checked.
 */
export interface SiteFile {
  /** Version of the file format. This version is 1. */
  readonly dewright?: Located<1>;
  /** What holds for the whole site: its name, its altitude, its kits, its defaults. */
  readonly site?: Located<SiteHeader>;
  /**
   * The rooms, chambers, ducts and lines of the site, each by its name: lower-case letters and digits, joined by
   * hyphens.
   */
  readonly spaces?: Located<ReadonlyMap<string, Located<Space>>>;
  /** The measurement points of the site, each by its tag. A tag has no blanks and is unique over the workspace. */
  readonly points?: Located<ReadonlyMap<string, Located<Point>>>;
}

/** How a finding of a rule is shown. */
export type Severity = 'off' | 'error' | 'warning' | 'information' | 'hint';

/** What a wall or stem is made of; its thermal conductivity follows from it. */
export type Material =
  | 'stainless-steel'
  | 'carbon-steel'
  | 'aluminium'
  | 'copper'
  | 'brass'
  | 'brick'
  | 'concrete'
  | 'aerated-concrete'
  | 'timber'
  | 'plywood'
  | 'glass'
  | 'polycarbonate'
  | 'polypropylene'
  | 'plastic'
  | 'ptfe'
  | 'peek'
  | 'grp';

/** What an insulating layer is made of; its thermal conductivity follows from it. */
export type InsulationMaterial =
  | 'mineral-wool'
  | 'glass-wool'
  | 'polyurethane-foam'
  | 'polystyrene-foam'
  | 'elastomeric-foam'
  | 'cellular-glass'
  | 'calcium-silicate';

/**
 * Something in or around the space that can hurt people. It adds the usual caution to findings, report and handover
 * plan.
 */
export type Hazard =
  | 'hot-surface'
  | 'pressure'
  | 'confined-space'
  | 'asphyxiant'
  | 'flammable-zone-0'
  | 'flammable-zone-1'
  | 'flammable-zone-2'
  | 'toxic'
  | 'electrical';

/** What holds for the whole site: its name, its altitude, its kits, its defaults. */
export interface SiteHeader {
  /** The name by which visits refer to the site: lower-case letters and digits, joined by hyphens. */
  readonly id?: Located<string>;
  /** The site in words, as it appears in reports. */
  readonly title?: Located<string>;
  /** Height above sea level. The air pressure follows from it by ISO 2533 where a space gives none. */
  readonly altitude?: Located<Quantity>;
  /** Temperature of the air around cabinets and outside the walls, lowest to highest. */
  readonly surroundings?: Located<QuantityRange>;
  /** The kit files whose equipment models this site uses. */
  readonly kits?: Located<readonly Located<string>[]>;
  /** Values used at every point of the site that does not say otherwise. */
  readonly defaults?: Located<SiteDefaults>;
  /** Severity per rule for this site, by the rule's name. */
  readonly rules?: Located<ReadonlyMap<string, Located<Severity>>>;
}

/** Values used at every point of the site that does not say otherwise. */
export interface SiteDefaults {
  /** The wettest that a sensor may see once it is heated. Built in: 80 %RH. */
  readonly sensorHumidityLimit?: Located<Quantity>;
  /** Above this an unheated sensor is at risk of condensation. Built in: 90 %RH. */
  readonly unheatedHumidityLimit?: Located<Quantity>;
  /** Least distance of any unheated surface from the dew point. Built in: 2 K. */
  readonly margin?: Located<Quantity>;
  /** Coverage factor k of every stated uncertainty. Built in: 2. */
  readonly coverage?: Located<number>;
  /** Order of the two words of a 32-bit register where the signal does not say it. Built in: big. */
  readonly registerByteOrder?: Located<ByteOrder>;
  /** Number format of a register where the signal does not say it. */
  readonly registerFormat?: Located<RegisterFormat>;
  /** Device address on the bus where a register signal does not say it. Built in: 1. */
  readonly registerDevice?: Located<number>;
  /** Resistance of the receiver where a current loop does not say it. */
  readonly loopLoad?: Located<Quantity>;
  /** Current on a fault where a current loop does not say it. */
  readonly loopOnFault?: Located<Quantity>;
  /** The receiver of analogue signals that do not name one: an id in a kit. */
  readonly receiver?: Located<string>;
}

/** A room, chamber, duct or line: the states of its air, its wall, and what attacks equipment or people there. */
export interface Space {
  /** The space in words, as it appears in reports. */
  readonly title?: Located<string>;
  /**
   * Pressure of the air in the space, lowest to highest or one value, absolute or with (g) as gauge. Left out, it
   * follows from the altitude of the site.
   */
  readonly pressure?: Located<QuantityRange>;
  /** The states that the air takes, in one envelope. Give either this or phases. */
  readonly air?: Located<Envelope>;
  /** Named phases of the process in the order of time, each an envelope. Give either these or air. */
  readonly phases?: Located<ReadonlyMap<string, Located<Envelope>>>;
  /** How much the air temperature varies across the space, per metre. */
  readonly gradient?: Located<Quantity>;
  /** The wall that the probes go through, with its insulation. The temperature of its inner surface follows from it. */
  readonly wall?: Located<Wall>;
  /** What in this space attacks equipment. Each model installed here has to withstand it. */
  readonly exposure?: Located<readonly Located<string>[]>;
  /** What in or around this space can hurt people. Findings, report and handover plan carry the cautions. */
  readonly hazards?: Located<readonly Located<Hazard>[]>;
}

/** The states that the air takes: the box of the ranges given, cut off at saturation. */
export interface Envelope {
  /** Air temperature, lowest to highest. */
  readonly temperature?: Located<QuantityRange>;
  /**
   * Relative humidity over water, lowest to highest. Give one of humidity, dew-point, dew-point-depression and
   * mixing-ratio.
   */
  readonly humidity?: Located<QuantityRange>;
  /** Dew point over water, lowest to highest, where it does not follow the air temperature. */
  readonly dewPoint?: Located<QuantityRange>;
  /** Air temperature less dew point, smallest to largest, where the two move together. */
  readonly dewPointDepression?: Located<QuantityRange>;
  /** Mass of water vapour per mass of dry air, lowest to highest. */
  readonly mixingRatio?: Located<QuantityRange>;
  /** Air speed at the probes, lowest to highest. */
  readonly speed?: Located<QuantityRange>;
  /** The fastest change of the air temperature. */
  readonly ramp?: Located<Quantity>;
}

/** The wall that the probes go through, with its insulation. The temperature of its inner surface follows from it. */
export interface Wall {
  /** Thickness of the wall itself, without insulation. */
  readonly thickness?: Located<Quantity>;
  /** What the wall is made of. */
  readonly material?: Located<Material>;
  /** Thickness of the insulation on the wall. */
  readonly insulation?: Located<Quantity>;
  /** What the insulation is made of. */
  readonly insulationMaterial?: Located<InsulationMaterial>;
}

/** One place where the air is measured: its probes, what they report, how they are supplied, connected and checked. */
export interface Point {
  /** The point in words, as it appears in reports. */
  readonly title?: Located<string>;
  /** The space whose air is measured, by its name under spaces. */
  readonly space?: Located<string>;
  /** The humidity probe of the point: its model, its heater and how it is mounted. */
  readonly humidityProbe?: Located<HumidityProbe>;
  /** The unheated temperature probe beside the humidity probe. It is used only where a report names it. */
  readonly airTemperatureProbe?: Located<AirTemperatureProbe>;
  /** The transmitter that the probes of the point are connected to. */
  readonly transmitter?: Located<Transmitter>;
  /** The quantities that the point reports, each by its name. */
  readonly reports?: Located<ReadonlyMap<QuantityName, Located<Report>>>;
  /** What feeds the probe or transmitter, and through which cable. */
  readonly supply?: Located<Supply>;
  /** The analogue outputs and registers of the point, each by the name on the terminal or in the register list. */
  readonly signals?: Located<ReadonlyMap<string, Located<Signal>>>;
  /**
   * The alarms raised from the point's quantities, each by its name: lower-case letters and digits, joined by hyphens.
   */
  readonly alarms?: Located<ReadonlyMap<string, Located<Alarm>>>;
  /** How and how often the point is checked against something better. */
  readonly checks?: Located<Checks>;
}

/** The humidity probe of the point: its model, its heater and how it is mounted. */
export interface HumidityProbe {
  /** The humidity probe's model: an id under humidity-probes in a kit. */
  readonly model?: Located<string>;
  /** Serial number of the probe. In quotes where it is all digits, so that no zero is lost. */
  readonly serial?: Located<string>;
  /** What is asked of the heater that keeps the sensor dry. Without a heater, leave it out or set its mode to off. */
  readonly heater?: Located<Heater>;
  /** How the humidity probe is placed in the air and in the wall. */
  readonly mounting?: Located<HumidityProbeMounting>;
}

/** What is asked of the heater that keeps the sensor dry. Without a heater, leave it out or set its mode to off. */
export interface Heater {
  /** When the heater works. */
  readonly mode?: Located<'off' | 'continuous' | 'on-demand'>;
  /**
   * How far the heater is asked to hold the sensor above the air temperature. What it can reach is computed from the
   * kit.
   */
  readonly rise?: Located<Quantity>;
  /** Who switches the heater on and sets its rise. */
  readonly setAt?: Located<'factory' | 'site'>;
  /** Why the heater is set so, for whoever reads the report or the handover plan later. */
  readonly reason?: Located<string>;
}

/** How the humidity probe is placed in the air and in the wall. */
export interface HumidityProbeMounting {
  /** Length of stem and head in the air, from the inner surface of the wall to the tip. */
  readonly insertion?: Located<Quantity>;
  /** How the probe lies. It decides where condensate on the stem runs. */
  readonly attitude?: Located<'horizontal' | 'head-up' | 'head-down'>;
  /** Thickness of the insulation around the fitting and the part of the stem outside the wall. */
  readonly insulation?: Located<Quantity>;
  /** How the air reaches the sensor. Built in: direct. */
  readonly path?: Located<'direct' | 'sample-line'>;
  /** Lowest temperature of the wall of the sample line. It has to stay above the dew point. */
  readonly sampleLineTemperature?: Located<Quantity>;
}

/** The unheated temperature probe beside the humidity probe. It is used only where a report names it. */
export interface AirTemperatureProbe {
  /** The temperature probe's model: an id under temperature-probes in a kit. */
  readonly model?: Located<string>;
  /** Serial number of the probe. In quotes where it is all digits, so that no zero is lost. */
  readonly serial?: Located<string>;
  /** How the air-temperature probe is placed in the wall and relative to the humidity probe. */
  readonly mounting?: Located<AirTemperatureProbeMounting>;
}

/** How the air-temperature probe is placed in the wall and relative to the humidity probe. */
export interface AirTemperatureProbeMounting {
  /** Length of stem in the air, from the inner surface of the wall to the tip. */
  readonly insertion?: Located<Quantity>;
  /** Thickness of the insulation around the fitting and the part of the stem outside the wall. */
  readonly insulation?: Located<Quantity>;
  /** Distance between the tips of the two probes. */
  readonly spacing?: Located<Quantity>;
  /** Where the air-temperature probe is, seen from the humidity probe. */
  readonly position?: Located<'below' | 'above' | 'beside' | 'upstream' | 'downstream'>;
}

/** The transmitter that the probes of the point are connected to. */
export interface Transmitter {
  /** The transmitter's model: an id under transmitters in a kit. */
  readonly model?: Located<string>;
  /**
   * Serial number of the transmitter. In quotes where it is all digits, so that no zero is lost. Points with the same
   * one share the transmitter.
   */
  readonly serial?: Located<string>;
}

/** One reported quantity: how good it must be, and where what it depends on comes from. */
export interface Report {
  /**
   * Where the air temperature comes from: air-temperature-probe, humidity-probe, the tag of another point, or a fixed
   * value. Left out, it is the humidity probe's own temperature while its heater is off; with the heater on it must be
   * given.
   */
  readonly airTemperature?: Located<AirTemperatureSource>;
  /** The largest error that the process can bear, either way. */
  readonly tolerance?: Located<Quantity>;
  /** The process pressure used for this quantity. It overrides that of the space. */
  readonly pressure?: Located<Quantity>;
  /** The other pressure to which the gas is brought. Only for dew-point-at, which means nothing without it. */
  readonly atPressure?: Located<Quantity>;
}

/** What feeds the probe or transmitter, and through which cable. */
export interface Supply {
  /** What the supply is for. Built in: installed. */
  readonly kind?: Located<'installed' | 'service-cable'>;
  /** Voltage at the near end of the cable, the lowest that the supply may give. */
  readonly voltage?: Located<Quantity>;
  /** The supply cable. The voltage lost in it follows from its length and conductor by IEC 60228. */
  readonly cable?: Located<Cable>;
}

/** The supply cable. The voltage lost in it follows from its length and conductor by IEC 60228. */
export interface Cable {
  /** Length of the cable, one way. */
  readonly length?: Located<Quantity>;
  /** Nominal cross-section of one copper conductor. */
  readonly conductor?: Located<Quantity>;
}

/** Which half of a 32-bit number comes first. */
export type ByteOrder = 'big' | 'little';

/** How a number is held in a register. The 32-bit formats take two registers. */
export type RegisterFormat = 'int16' | 'uint16' | 'int32' | 'uint32' | 'float32';

/** One output or register that carries a quantity of the point. Its kind decides which keys it has. */
export type Signal = CurrentLoopSignal | VoltageSignal | RegisterSignal;

/** An analogue output as a current. */
export interface CurrentLoopSignal {
  /** A current loop, usually 4 .. 20 mA. */
  readonly kind: 'current-loop';
  /** The quantity that the current stands for. */
  readonly quantity?: Located<QuantityName>;
  /** Current at the low and at the high end of the span. Built in: 4 .. 20 mA. */
  readonly current?: Located<QuantityRange>;
  /** The quantity at the low and at the high end of the current. */
  readonly span?: Located<QuantityRange>;
  /** Resistance of the receiver in the loop, without the cable. */
  readonly load?: Located<Quantity>;
  /** Current that reports a fault, outside the measuring range by NAMUR NE 43. */
  readonly onFault?: Located<Quantity>;
  /** What reads the current: an id under receivers in a kit. */
  readonly receiver?: Located<string>;
}

/** An analogue output as a voltage. */
export interface VoltageSignal {
  /** A voltage, usually 0 .. 10 V. */
  readonly kind: 'voltage';
  /** The quantity that the voltage stands for. */
  readonly quantity?: Located<QuantityName>;
  /** Voltage at the low and at the high end of the span. Built in: 0 .. 10 V. */
  readonly voltage?: Located<QuantityRange>;
  /** The quantity at the low and at the high end of the voltage. */
  readonly span?: Located<QuantityRange>;
  /** What reads the voltage: an id under receivers in a kit. */
  readonly receiver?: Located<string>;
}

/** A number in a register that the controller reads or writes over a bus. */
export interface RegisterSignal {
  /** A register on a bus. */
  readonly kind: 'register';
  /** The quantity that the register holds. */
  readonly quantity?: Located<QuantityName>;
  /** Address of the device on the bus. Left out, it is that of the site's defaults. */
  readonly device?: Located<number>;
  /** Number of the register, as the device's register list counts it. */
  readonly address?: Located<number>;
  /** How the number is held. Left out, it is that of the site's defaults. */
  readonly format?: Located<RegisterFormat>;
  /** What one count of the register stands for, in the unit of the register. */
  readonly scale?: Located<Quantity>;
  /** Which word of a 32-bit number comes first. Left out, it is that of the site's defaults. */
  readonly byteOrder?: Located<ByteOrder>;
  /** True where the controller writes the quantity into the device, false where it reads it. Built in: false. */
  readonly write?: Located<boolean>;
}

/** A limit on a quantity of the point, and how the alarm is raised and cleared. */
export interface Alarm {
  /** The quantity that the alarm watches. */
  readonly quantity?: Located<QuantityName>;
  /** The alarm is raised above this value. Give either this or below. */
  readonly above?: Located<Quantity>;
  /** The alarm is raised below this value. Give either this or above. */
  readonly below?: Located<Quantity>;
  /** The value at which the alarm clears. Its distance from the limit is the hysteresis. */
  readonly clear?: Located<Quantity>;
  /** How long the quantity has to be past the limit before the alarm is raised. Built in: 0 s. */
  readonly delay?: Located<Quantity>;
}

/** How and how often the point is checked against something better. */
export interface Checks {
  /** Time from one check to the next. */
  readonly interval?: Located<Quantity>;
  /** What the point is checked against. */
  readonly method?: Located<'saturated-salt' | 'reference-instrument' | 'laboratory'>;
  /** The salts of a saturated-salt check. Two that span the working humidity show both offset and slope. */
  readonly salts?: Located<readonly Located<string>[]>;
  /** Temperature at which the check is made. */
  readonly at?: Located<Quantity>;
  /** Whether the probe's heater works during the check. */
  readonly heater?: Located<HeaterDuringCheck>;
  /** Date of the last check. A later visit counts instead. */
  readonly last?: Located<CalendarDate>;
}

/** Whether the heater works while the probe is checked. A heated sensor reads lower than the air over a salt. */
export type HeaterDuringCheck = 'off' | 'on';

/** Equipment models and their limits, typed in from the makers' data sheets. */
export interface KitFile {
  /** Version of the file format. This version is 1. */
  readonly dewright?: Located<1>;
  /** The name of the kit. */
  readonly kit?: Located<KitHeader>;
  /** Models of humidity probes, each by its id. */
  readonly humidityProbes?: Located<ReadonlyMap<string, Located<HumidityProbeModel>>>;
  /** Models of temperature probes, each by its id. */
  readonly temperatureProbes?: Located<ReadonlyMap<string, Located<TemperatureProbeModel>>>;
  /** Models of transmitters, each by its id. A point may name one. */
  readonly transmitters?: Located<ReadonlyMap<string, Located<TransmitterModel>>>;
  /** Models of analogue inputs that read the signals, each by its id. */
  readonly receivers?: Located<ReadonlyMap<string, Located<ReceiverModel>>>;
}

/** The name of the kit. */
export interface KitHeader {
  /** The kit's name: lower-case letters and digits, joined by hyphens. */
  readonly id?: Located<string>;
  /** The kit in words, as it appears in reports. */
  readonly title?: Located<string>;
}

/** What the data sheet says about a humidity probe. */
export interface HumidityProbeModel {
  /** The model in words, as it appears in reports. */
  readonly title?: Located<string>;
  /** The conditions in which the humidity probe may work. */
  readonly ranges?: Located<HumidityProbeRanges>;
  /**
   * The accuracy of relative humidity, row by row. Where several rows match, the one with the smallest figure is used.
   */
  readonly accuracy?: Located<readonly Located<AccuracyRow>[]>;
  /** How well the probe knows the temperature of its own sensor. */
  readonly headTemperature?: Located<Quantity>;
  /** How far the reading may wander in a year. */
  readonly drift?: Located<Quantity>;
  /** Time to show 63 % of a step in humidity, at an air speed of 1 m/s. */
  readonly response?: Located<Quantity>;
  /** The sensing head as a cylinder. Its heat loss and its plume follow from it. */
  readonly head?: Located<Head>;
  /** The tube between wall and sensor. It conducts heat to or from the wall. */
  readonly stem?: Located<Stem>;
  /** The heater that keeps the sensor dry. A model without one leaves it out. */
  readonly heater?: Located<HeaterModel>;
  /** The supply that the model needs. */
  readonly supply?: Located<SupplyDemand>;
  /** The exposures that the model withstands, by the names that spaces use. */
  readonly withstands?: Located<readonly Located<string>[]>;
  /** The flammable zones that the model is certified for. Left out or empty, it is certified for none. */
  readonly zones?: Located<readonly Located<'flammable-zone-0' | 'flammable-zone-1' | 'flammable-zone-2'>[]>;
}

/** The conditions in which the humidity probe may work. */
export interface HumidityProbeRanges {
  /** Relative humidity that the probe measures, lowest to highest. */
  readonly relativeHumidity?: Located<QuantityRange>;
  /** Temperature that the head bears, lowest to highest, its own heating included. */
  readonly temperature?: Located<QuantityRange>;
  /** Pressure that the probe bears, lowest to highest. */
  readonly pressure?: Located<QuantityRange>;
}

/** One line of the accuracy table: where it holds, and how good the probe is there. */
export interface AccuracyRow {
  /** Relative humidity at the sensor for which the row holds. Left out, it holds for all. */
  readonly when?: Located<QuantityRange>;
  /** Temperature of the sensor for which the row holds. Left out, it holds for all. */
  readonly temperature?: Located<QuantityRange>;
  /** The accuracy of relative humidity, either way. */
  readonly relativeHumidity?: Located<Quantity>;
  /**
   * What the accuracy means: rectangular for limits within which every value is equally likely, or the coverage factor
   * k. Left out, k is that of the site's defaults.
   */
  readonly coverage?: Located<string | number>;
}

/** The sensing head as a cylinder. Its heat loss and its plume follow from it. */
export interface Head {
  /** Outer diameter of the head. */
  readonly diameter?: Located<Quantity>;
  /** Length of the heated head. */
  readonly length?: Located<Quantity>;
}

/** The tube between wall and sensor. It conducts heat to or from the wall. */
export interface Stem {
  /** Outer diameter of the stem. */
  readonly diameter?: Located<Quantity>;
  /** Thickness of the tube. */
  readonly wall?: Located<Quantity>;
  /** What the tube is made of. */
  readonly material?: Located<Material>;
}

/** The heater that keeps the sensor dry. A model without one leaves it out. */
export interface HeaterModel {
  /** The most power that the heater takes. */
  readonly power?: Located<Quantity>;
  /** How the heater loads the supply. */
  readonly kind?: Located<'constant-power' | 'resistive'>;
  /** Voltage at which a resistive heater takes its power. A constant-power heater needs none. */
  readonly ratedVoltage?: Located<Quantity>;
  /** Least voltage at the probe for the heater to work. */
  readonly minimumVoltage?: Located<Quantity>;
  /** The largest rise above air temperature that can be set. */
  readonly maximumRise?: Located<Quantity>;
}

/** The supply that the model needs. */
export interface SupplyDemand {
  /** Supply voltage at the terminals, lowest to highest. */
  readonly voltage?: Located<QuantityRange>;
  /** Power taken, without the heater. */
  readonly power?: Located<Quantity>;
}

/** What the data sheet says about a temperature probe. */
export interface TemperatureProbeModel {
  /** The model in words, as it appears in reports. */
  readonly title?: Located<string>;
  /** The conditions in which the temperature probe may work. */
  readonly ranges?: Located<TemperatureProbeRanges>;
  /** The accuracy of the temperature probe: a value in K, or the class of its sensor by IEC 60751. */
  readonly accuracy?: Located<TemperatureAccuracy | Quantity>;
  /** How far the reading may wander in a year. */
  readonly drift?: Located<Quantity>;
  /** Time to show 63 % of a step in temperature, at an air speed of 1 m/s. */
  readonly response?: Located<Quantity>;
  /** The tube between wall and sensor. It conducts heat to or from the wall. */
  readonly stem?: Located<Stem>;
  /** The exposures that the model withstands, by the names that spaces use. */
  readonly withstands?: Located<readonly Located<string>[]>;
  /** The flammable zones that the model is certified for. Left out or empty, it is certified for none. */
  readonly zones?: Located<readonly Located<'flammable-zone-0' | 'flammable-zone-1' | 'flammable-zone-2'>[]>;
}

/** The conditions in which the temperature probe may work. */
export interface TemperatureProbeRanges {
  /** Temperature that the probe measures, lowest to highest. */
  readonly temperature?: Located<QuantityRange>;
  /** Pressure that the probe bears, lowest to highest. */
  readonly pressure?: Located<QuantityRange>;
}

/** The accuracy of the temperature probe: a value in K, or the class of its sensor by IEC 60751. */
export interface TemperatureAccuracy {
  /** The class of the platinum sensor by IEC 60751. */
  readonly class?: Located<'AA' | 'A' | 'B'>;
}

/** What the data sheet says about a transmitter. */
export interface TransmitterModel {
  /** The model in words, as it appears in reports. */
  readonly title?: Located<string>;
  /** How many probes can be connected, humidity and temperature probes together. */
  readonly probes?: Located<number>;
  /** The supply that the model needs. */
  readonly supply?: Located<SupplyDemand>;
  /** How many outputs of each kind the transmitter has. */
  readonly outputs?: Located<TransmitterOutputs>;
  /** Least voltage that the transmitter itself needs across its current output. */
  readonly loopMinimumVoltage?: Located<Quantity>;
  /** Accuracy of the analogue outputs, as a share of their span. */
  readonly outputAccuracy?: Located<Quantity>;
  /** The quantities that the transmitter can put out while it has no air temperature. */
  readonly outputsWithoutAirTemperature?: Located<readonly Located<QuantityName>[]>;
}

/** How many outputs of each kind the transmitter has. */
export interface TransmitterOutputs {
  /** Number of current outputs. Built in: 0. */
  readonly currentLoop?: Located<number>;
  /** Number of voltage outputs. Built in: 0. */
  readonly voltage?: Located<number>;
  /** Whether quantities can be read as registers over a bus. Built in: false. */
  readonly register?: Located<boolean>;
}

/** An analogue input that reads signals. */
export interface ReceiverModel {
  /** The model in words, as it appears in reports. */
  readonly title?: Located<string>;
  /** The current or voltage that the input reads, at the low and at the high end of its counts. */
  readonly input?: Located<QuantityRange>;
  /** Resolution of the input in bits. */
  readonly bits?: Located<number>;
  /** Accuracy of the input, as a share of its range. */
  readonly accuracy?: Located<Quantity>;
}

/** What was read, set and found on one visit to a site. */
export interface VisitFile {
  /** Version of the file format. This version is 1. */
  readonly dewright?: Located<1>;
  /** Where, when, by whom and why. */
  readonly visit?: Located<VisitHeader>;
  /**
   * The handover steps that were done, each by the name that the handover plan gives it. The same step of a second
   * point has its tag behind the name: heater-on-K1-MT-101.
   */
  readonly steps?: Located<ReadonlyMap<string, Located<Step>>>;
  /** Simultaneous pairs: what the point showed and what the reference showed. */
  readonly readings?: Located<readonly Located<Reading>[]>;
  /** What the instruments themselves say they are set to. It is compared with the site file. */
  readonly settings?: Located<readonly Located<Setting>[]>;
  /**
   * A recording of a space as a CSV or Parquet file, by its path relative to this file. The first row of a CSV file
   * names the columns.
   */
  readonly log?: Located<string>;
  /**
   * The space that the recording is of. It may be left out where the site has one space only, or where all points of
   * this visit are in one.
   */
  readonly logSpace?: Located<string>;
  /**
   * Which column of the recording holds what. Each value is the name in the first row of the file. A unit in that name
   * is heeded, as in T_dry [degF]; where the name has none, NAME in UNIT gives it one, as in T_dry in degF.
   */
  readonly logColumns?: Located<LogColumns>;
}

/** Where, when, by whom and why. */
export interface VisitHeader {
  /** The id of the site visited. */
  readonly site?: Located<string>;
  /** The date of the visit. */
  readonly date?: Located<CalendarDate>;
  /** Who made the visit. */
  readonly by?: Located<string>;
  /** What the visit was for. */
  readonly purpose?: Located<'commissioning' | 'check' | 'repair'>;
}

/** One handover step at one point, and whether it was done. */
export interface Step {
  /** The point, by its tag. */
  readonly point?: Located<string>;
  /** True where the step was done, false where it is still open. */
  readonly done?: Located<boolean>;
  /** What is worth knowing about it. */
  readonly note?: Located<string>;
}

/** One pair of values read at the same time: the point's and the reference's. */
export interface Reading {
  /** The point, by its tag. */
  readonly point?: Located<string>;
  /** The quantity that was read. */
  readonly quantity?: Located<QuantityName>;
  /** What the point showed. */
  readonly shown?: Located<Quantity>;
  /** What the reference showed, or the humidity over the salt. */
  readonly reference?: Located<Quantity>;
  /** Expanded uncertainty of the reference. Over a salt it is taken from the published table where it is left out. */
  readonly referenceUncertainty?: Located<Quantity>;
  /** Temperature at which the pair was read. */
  readonly at?: Located<Quantity>;
  /** What the reference was: saturated-salt and the salt's formula, reference-instrument, or laboratory. */
  readonly using?: Located<string>;
  /** Whether the pair was read before or after any adjustment. Drift is fitted through the pairs as found. */
  readonly state?: Located<'as-found' | 'as-left'>;
  /** Whether the probe's heater worked while the pair was read. */
  readonly heater?: Located<HeaterDuringCheck>;
  /** What is worth knowing about it. */
  readonly note?: Located<string>;
}

/** What the instruments of one point say they are set to. */
export interface Setting {
  /** The point, by its tag. */
  readonly point?: Located<string>;
  /**
   * One setting, such as heater, heater.rise, relative-humidity.air-temperature, AO1.span or too-wet.delay, and the
   * value that the instrument shows.
   */
  readonly others: ReadonlyMap<string, Located<string | number | boolean>>;
}

/**
 * Which column of the recording holds what. Each value is the name in the first row of the file. A unit in that name is
 * heeded, as in T_dry [degF]; where the name has none, NAME in UNIT gives it one, as in T_dry in degF.
 */
export interface LogColumns {
  /**
   * Column of the date and time: by ISO 8601 best; other usual forms, seconds or milliseconds since 1970, and seconds
   * from the start are read too. Without a zone it is taken as local time.
   */
  readonly time?: Located<string>;
  /** Column of the air temperature in degC. */
  readonly airTemperature?: Located<string>;
  /** Column of the relative humidity over water in %RH. */
  readonly relativeHumidity?: Located<string>;
  /** Column of the dew point over water in degC. */
  readonly dewPoint?: Located<string>;
  /** Column of the frost point in degC. */
  readonly frostPoint?: Located<string>;
  /** Column of the air temperature less the dew point in K. */
  readonly dewPointDepression?: Located<string>;
  /** Column of the wet-bulb temperature in degC. */
  readonly wetBulb?: Located<string>;
  /** Column of the vapour pressure in hPa. */
  readonly vapourPressure?: Located<string>;
  /** Column of the mixing ratio in g/kg. */
  readonly mixingRatio?: Located<string>;
  /** Column of the absolute humidity in g/m3. */
  readonly absoluteHumidity?: Located<string>;
  /** Column of the absolute pressure in kPa. Without it the pressure is that of the space. */
  readonly pressure?: Located<string>;
  /** Column of the air speed in m/s. */
  readonly speed?: Located<string>;
}
