// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/said_of_others.h"

#include "app/desk/formats.h"

#include <QCoreApplication>
#include <QStringList>

namespace holdfast::app {

namespace {

class OthersWords {
    Q_DECLARE_TR_FUNCTIONS(OthersWords)
};

// "3", "3–9", "3–5, 8"
QString numbersOf(const std::vector<std::size_t>& garments) {
    const auto number = [&](std::size_t at) {
        return valueWords(Numeral{static_cast<std::int64_t>(garments[at]) + 1});
    };
    QStringList parts;
    for (std::size_t first = 0; first < garments.size();) {
        std::size_t last = first;
        while (last + 1 < garments.size() && garments[last + 1] == garments[last] + 1)
            ++last;
        parts.append(first == last ? number(first)
                                   : QStringLiteral("%1–%2").arg(number(first), number(last)));
        first = last + 1;
    }
    return parts.join(QStringLiteral(", "));
}

} // namespace

void SaidOfOthers::add(std::size_t garment, std::vector<TableMessage> said) {
    for (TableMessage& message : said) {
        if (message.tone != Tone::Held)
            continue;
        const std::pair key{message.lead, message.text};
        if (const auto known = m_known.constFind(key); known != m_known.constEnd()) {
            m_said[*known].garments.push_back(garment);
            continue;
        }
        m_known.insert(key, m_said.size());
        m_said.push_back({std::move(message), {garment}});
    }
}

void SaidOfOthers::sayInto(std::vector<TableMessage>& messages) {
    for (auto& [message, garments] : m_said) {
        const QString numbers = numbersOf(garments);
        if (!message.namesItsKind && garments.size() == 1)
            message.lead = OthersWords::tr("Garment %1: %2").arg(numbers, message.lead);
        else if (!message.namesItsKind)
            message.lead = OthersWords::tr("Garments %1: %2").arg(numbers, message.lead);
        messages.push_back(std::move(message));
    }
}

} // namespace holdfast::app
