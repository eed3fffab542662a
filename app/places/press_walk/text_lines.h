// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Words broken into lines at a width: reasons and measures are never elided.

#include "app/theme/type.h"

#include <QString>
#include <QStringList>

namespace holdfast::app {

// Empty for no words.
QStringList brokenLines(const QString& text, Type type, qreal width);

} // namespace holdfast::app
