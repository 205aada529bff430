// The straight path, stage by stage.
namespace rangebook {}
