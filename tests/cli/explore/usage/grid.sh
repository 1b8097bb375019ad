boilback explore calm.bath
boilback explore uncertain.bath --grid "heat input = 200 kBtu/h to 500 kBtu/h"
boilback explore uncertain.bath --grid "heat input = 200 kBtu/h : 3"
boilback explore uncertain.bath --grid "heat efficiency = 50 % to 60 % : 3"
boilback explore uncertain.bath --grid "bath strength = 5 lb/gal to 6 lb/gal : 3"
boilback explore uncertain.bath --grid "heat input = 1 kW | 2 kW : 3"
boilback explore uncertain.bath --shard 8/7
boilback explore uncertain.bath --shard half
boilback explore uncertain.bath --threads 1.5
boilback explore uncertain.bath --samples 0
boilback explore uncertain.bath calm.bath
boilback explore uncertain.bath --json --csv -
