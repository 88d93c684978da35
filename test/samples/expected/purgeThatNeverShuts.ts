import type { ExpectedCase } from '../expectedCase.ts';
import { airToFuel, filling, gramsPerSecond, inHg, kPa, percent } from '../secondRoute.ts';

/*
 * The bytes as they stand in the case, decoded by hand: SAE J1979, service 01 (and 02), parameters 04 to 10 as in the
 * public copies of its table, 2E and 33 from memory. Half a step is the half-width of each.
 */

/** 06, 07: one byte, 128 is no trim, a step is 100/128 %. */
const trim = (byte: number): number => percent(((byte - 128) * 100) / 128);
const trimHalf = percent(100 / 128 / 2);
/** 0C: two bytes, quarters of a turn a minute; in turns a second. */
const rpm = (high: number, low: number): number => (high * 256 + low) / 4 / 60;
/** 10: two bytes, hundredths of a gram a second. */
const air = (high: number, low: number): number => gramsPerSecond((high * 256 + low) / 100);
/** 05, 0F: one byte, 40 °C below zero is 0. */
const celsius = (byte: number): number => byte - 40 + 273.15;

const idle = { stft: trim(0x71), ltft: trim(0x75), maf: air(0x01, 0x0c) };
const fast = { stft: trim(0x7e), ltft: trim(0x7a), maf: air(0x03, 0x70) };
const drive = { stft: trim(0x80), ltft: trim(0x7d), maf: air(0x07, 0xda) };

/** E10 as UN Regulation No. 83 has it, CH1.93O0.033 (value from memory). */
const e10 = airToFuel(1.93, 0.033);

/** Fuel that the trims add: both together, of what the air would need. */
const added = ({ stft, ltft, maf }: typeof idle): number => (maf * ((1 + stft) * (1 + ltft) - 1)) / e10;

export const purgeThatNeverShuts: ExpectedCase = {
  file: 'purge-that-never-shuts.diag',
  values: {
    'stored.dtc_count': 0x81 & 0x7f,
    'stored.map': kPa(0x65),
    'stored.iat': celsius(0x4b),
    'frozen.load': 0x37 / 255,
    'frozen.ect': celsius(0x83),
    'frozen.stft_b1': trim(0x6e),
    'frozen.ltft_b1': trim(0x75),
    'frozen.map': kPa(0x21),
    'frozen.rpm': rpm(0x0b, 0x20),
    'frozen.vss': 0,
    'idle.rpm': rpm(0x0a, 0xf0),
    'idle.map': kPa(0x21),
    'idle.maf': idle.maf,
    'idle.stft_b1': idle.stft,
    'idle.ltft_b1': idle.ltft,
    'idle.purge_duty': 0,
    'idle.load': 0x37 / 255,
    'idle.ect': celsius(0x83),
    'idle.iat': celsius(0x4b),
    'idle.baro': kPa(0x65),
    'fast.rpm': rpm(0x27, 0x10),
    'fast.map': kPa(0x1c),
    'fast.maf': fast.maf,
    'fast.stft_b1': fast.stft,
    'fast.ltft_b1': fast.ltft,
    'drive.rpm': rpm(0x22, 0x60),
    'drive.vss': 0x50 / 3.6,
    'drive.map': kPa(0x3c),
    'drive.maf': drive.maf,
    'drive.ltft_b1': drive.ltft,
    'drive.iat': celsius(0x46),
    'clamped.maf': air(0x01, 0x1b),
    'idle_after.dtc_count': 0,
    'trims.at_idle': idle.stft + idle.ltft,
    'trims.held': fast.stft + fast.ltft,
    'trims.on_road': drive.stft + drive.ltft,
    'grams.at_idle': added(idle),
    'grams.held': added(fast),
    'grams.on_road': added(drive),
    filled: filling({ maf: 20.1, rpm: 2200, litres: 2, pascal: kPa(0x3c), kelvin: celsius(0x46) }),
    'without.left': trim(0x8a) + trim(0x75),
    'without.more_air': air(0x01, 0x1b) - air(0x01, 0x0c),
    'holds.manifold': kPa(0x65 - 0x21),
  },
  halfWidths: {
    'idle.rpm': 1 / 4 / 2 / 60,
    'idle.map': kPa(0.5),
    'idle.maf': gramsPerSecond(0.005),
    'idle.stft_b1': trimHalf,
    'idle.ect': 0.5,
    'stored.dtc_count': 0,
    'trims.at_idle': Math.hypot(trimHalf, trimHalf),
    'without.more_air': Math.hypot(gramsPerSecond(0.005), gramsPerSecond(0.005)),
    'holds.manifold': Math.hypot(kPa(0.5), kPa(0.5)),
    'seat.purge_vacuum': inHg(0.2),
    'grams.on_road': Math.hypot(
      (drive.maf * (1 + drive.ltft) * trimHalf) / e10,
      (drive.maf * (1 + drive.stft) * trimHalf) / e10,
      (gramsPerSecond(0.005) * drive.ltft) / e10,
    ),
  },
  notHolding: {
    'expect: at_idle between -10 % and 10 %': 'fails',
    'expect: seat.purge_vacuum < 1 inHg': 'fails',
  },
  suspects: {
    'purge valve does not shut': 'still possible',
    'leaking injector': 'ruled out',
    'fuel pressure too high': 'ruled out',
    'air-flow meter that reads high': 'ruled out',
  },
  findings: [],
};
