import type { Event } from '../../core/facts/event.js';
import { addressesOf } from '../events/addresses.js';
import { type InView, nameOfView, withView } from './in-view.js';

/** A way to look at a costing, and whether it is the one that is shown. */
export type ViewLink = { label: string; href: string; now: boolean };

/** The ways to look at a costing; alone is one only where packs are bought for others too. */
export const viewLinks = ({ key }: Event, asked: InView): ViewLink[] => {
  const now = nameOfView(asked);
  const at = addressesOf(key).costing;
  const links = [
    { value: '', label: 'Food as used' },
    { value: 'bought', label: 'Food as bought' },
    ...(asked.beside.length > 0 || now === 'bought-alone'
      ? [{ value: 'bought-alone', label: 'Bought for this party alone' }]
      : []),
  ];
  return links.map(({ value, label }) => ({
    label,
    href: withView(at, value),
    now: value === now || (value === 'bought' && now === 'bought-alone' && links.length === 2),
  }));
};
