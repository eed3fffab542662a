// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Reports of a shop, read as another program would, while this one has the shop open.

#include "app/command_line/reports.h"
#include "app/command_line/verbs.h"
#include "tests/app/shop_fixture.h"

#include <QJsonDocument>
#include <QJsonObject>

#include <string>

namespace holdfast::app::test {

class ReportFixture : public ShopFixture {
protected:
    Arguments asking(ReportName name, bool asJson = false) const {
        Arguments arguments;
        arguments.shop = path();
        arguments.verb = Verb::Report;
        arguments.report = name;
        arguments.asJson = asJson;
        return arguments;
    }
    std::string text(ReportName name) { return valueOf(report(asking(name), time().clock())); }
    QJsonObject json(ReportName name) {
        const std::string made = valueOf(report(asking(name, true), time().clock()));
        return QJsonDocument::fromJson(QByteArray::fromStdString(made)).object();
    }
};

} // namespace holdfast::app::test
