-- Spreads households over the nodes of a Citus cluster. Run once, as the owner of the tables, after
-- the service has migrated an empty database and before the first household is made.
--
-- Every key begins with household_id, every query names it, and all tables of a household are kept
-- on one node, so a turn touches one node. Three things are looked up otherwise:
--   * device_token, by the hash of a token, before the household is known: spread by that hash;
--   * pairing, by the hash of a code, for devices that have no household yet: spread by that hash;
--   * telling, for what is due in any household: each node answers for its own, a few rows at a time.
create extension if not exists citus;

select create_distributed_table('household', 'household_id', shard_count => 64);
select create_distributed_table('person', 'household_id', colocate_with => 'household');
select create_distributed_table('place', 'household_id', colocate_with => 'household');
select create_distributed_table('marker', 'household_id', colocate_with => 'household');
select create_distributed_table('item', 'household_id', colocate_with => 'household');
select create_distributed_table('purchase', 'household_id', colocate_with => 'household');
select create_distributed_table('note', 'household_id', colocate_with => 'household');
select create_distributed_table('reminder', 'household_id', colocate_with => 'household');
select create_distributed_table('stock_take', 'household_id', colocate_with => 'household');
select create_distributed_table('journal', 'household_id', colocate_with => 'household');
select create_distributed_table('conversation', 'household_id', colocate_with => 'household');
select create_distributed_table('turn', 'household_id', colocate_with => 'household');
select create_distributed_table('device', 'household_id', colocate_with => 'household');
select create_distributed_table('telling', 'household_id', colocate_with => 'household');
select create_distributed_table('pairing_guess', 'household_id', colocate_with => 'household');
select create_distributed_table('device_token', 'token_hash', colocate_with => 'none');
select create_distributed_table('pairing', 'code_hash', colocate_with => 'none');
