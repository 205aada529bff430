-- Where linking by likeness parts its bands in a shop, in percent. Empty: as in every shop.
ALTER TABLE shop ADD COLUMN link_above INTEGER CHECK (link_above BETWEEN 1 AND 100);
ALTER TABLE shop ADD COLUMN ask_above INTEGER CHECK (ask_above BETWEEN 1 AND 100);
