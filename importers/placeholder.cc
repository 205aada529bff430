// Placeholder until the first stage of this layer lands.
