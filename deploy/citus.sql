-- Spreads households over the nodes of a Citus cluster. Run once, as the owner of the tables, after
-- the service has migrated an empty database and before the first household is made.
--
-- Every key begins with household_id, every statement names it but for a short list, and all tables of a household
-- are kept on one node, so a turn touches one node (tests/store/statements.ts holds the store to that). Two things are
-- looked up otherwise:
--   * device_token, by the hash of a token, before the household is known: spread by that hash;
--   * pairing, by the hash of a code, for devices that have no household yet, counted all together: a few rows that
--     live ten minutes, kept where they are, on the coordinator.
-- What is due in any household is read without locks over all nodes, a few rows at a time; each row is then leased by
-- an update that names its household.

create extension if not exists citus;

-- Whose rows may be seen is a setting of the transaction: it must go along to the nodes. For every database user:
do $$ begin
  execute format('alter database %I set citus.propagate_set_commands = %L', current_database(), 'local');
end $$;

select create_distributed_table('household', 'household_id', shard_count => 64);
select create_distributed_table('person', 'household_id', colocate_with => 'household');
select create_distributed_table('place', 'household_id', colocate_with => 'household');
select create_distributed_table('marker', 'household_id', colocate_with => 'household');
select create_distributed_table('item', 'household_id', colocate_with => 'household');
select create_distributed_table('purchase', 'household_id', colocate_with => 'household');
select create_distributed_table('note', 'household_id', colocate_with => 'household');
select create_distributed_table('reminder', 'household_id', colocate_with => 'household');
select create_distributed_table('stock_take', 'household_id', colocate_with => 'household');
select create_distributed_table('power_cut', 'household_id', colocate_with => 'household');
select create_distributed_table('journal', 'household_id', colocate_with => 'household');
select create_distributed_table('conversation', 'household_id', colocate_with => 'household');
select create_distributed_table('turn', 'household_id', colocate_with => 'household');
select create_distributed_table('device', 'household_id', colocate_with => 'household');
select create_distributed_table('device_journal', 'household_id', colocate_with => 'household');
select create_distributed_table('notice_address', 'household_id', colocate_with => 'household');
select create_distributed_table('telling', 'household_id', colocate_with => 'household');
select create_distributed_table('pairing_guess', 'household_id', colocate_with => 'household');
select create_distributed_table('device_token', 'token_hash', colocate_with => 'none');
