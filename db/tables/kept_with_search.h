// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What is read of all orders to look for one, kept with the connection until the index of the search
// changes: reading it takes longer than a key that is typed may.

#include "db/sqlite/connection.h"

#include <functional>
#include <memory>
#include <typeindex>

namespace holdfast::db {

std::shared_ptr<const void> keptWithSearch(Connection& connection, std::type_index what,
                                           const std::function<std::shared_ptr<const void>()>& read);

// One of a type.
template <class What>
std::shared_ptr<const What> keptWithSearch(Connection& connection, What (*read)(Connection&)) {
    return std::static_pointer_cast<const What>(keptWithSearch(
        connection, typeid(What), [&] { return std::make_shared<const What>(read(connection)); }));
}

} // namespace holdfast::db
