// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A small workshop, the fair's laptop and what lies between them, made once in a program.

#include "tests/db/exchange_fixture.h"

namespace holdfast::fuzz {

class PreparedShop : public db::Laptops {
public:
    static PreparedShop& instance() {
        static PreparedShop shop;
        return shop;
    }

    db::Shop& workshop() { return shop(); }
    db::Shop& fair() { return *m_fair->shop; }
    Now moment() const { return now(); }

    std::filesystem::path aFile(std::string_view bytes) {
        db::testing::writeBytes(m_path, bytes);
        return m_path;
    }
    std::filesystem::path realNews() const { return m_news; }

    // As it was when it was made.
    void putBack() {
        copyOnline(m_asMade, shop().connection());
        (void)shop().catchUp({});
    }

private:
    PreparedShop()
        : m_asMade(db::Connection::openInMemory()) {
        receiveCleanTees(3);
        m_fair = &aLaptop();
        taken(*m_fair->shop, aDraft());
        exchange(*m_fair);
        takeTees();
        taken(*m_fair->shop, aDraft(2));
        m_news = newsFrom(*m_fair->shop);
        copyOnline(shop().connection(), m_asMade);
    }
    void TestBody() override {}

    db::Connection m_asMade;
    Laptop* m_fair = nullptr;
    std::filesystem::path m_news;
    const std::filesystem::path m_path = m_folder / "input";
};

} // namespace holdfast::fuzz
