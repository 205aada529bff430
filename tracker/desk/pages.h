// The pages of the desk. Each is a function of the desk and what was asked; the list of them, with
// their addresses, is desk_routes().
#pragma once

#include "tracker/desk/desk.h"

namespace rangebook {

DeskAnswer start_page(Desk& desk, const DeskAsk& ask);
DeskAnswer style_sheet(Desk& desk, const DeskAsk& ask);
DeskAnswer script(Desk& desk, const DeskAsk& ask);
DeskAnswer try_demo(Desk& desk, const DeskAsk& ask);
DeskAnswer leave_demo(Desk& desk, const DeskAsk& ask);

DeskAnswer brief_page(Desk& desk, const DeskAsk& ask);
DeskAnswer moves_page(Desk& desk, const DeskAsk& ask);
DeskAnswer line_page(Desk& desk, const DeskAsk& ask);
DeskAnswer prices_page(Desk& desk, const DeskAsk& ask);
DeskAnswer sizes_of_shop_page(Desk& desk, const DeskAsk& ask);
DeskAnswer reach_page(Desk& desk, const DeskAsk& ask);
DeskAnswer order_cost_page(Desk& desk, const DeskAsk& ask);

}  // namespace rangebook
