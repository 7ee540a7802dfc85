/** A rose club and its members; club, people and places are made up. */
export const CLUB = {
  name: 'Pebbleford Rose Circle',
  secretary: 'Ottis Fenwhistle',
  members: [
    { member: 'Wilmot Hazeldrake', place: 'Pebbleford', roses: 350 },
    { member: 'Ottis Fenwhistle', place: 'Dunnock Hollow', roses: 120 },
    { member: 'Maribel Quorn-Tate', place: 'Harrowmere', roses: 64 },
    { member: 'Lunette Brackenshaw', place: 'Thrushcombe', roses: 210 },
    { member: 'Ansel Pottlewick', place: 'Lower Larkenby', roses: 85 },
  ],
} as const;
