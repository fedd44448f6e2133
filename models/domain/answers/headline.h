// What an answer has in common, whatever method is behind it: a sentence whose key figures stand
// out, how the matter stands, and the reasons with their assumptions.
#pragma once

#include "models/domain/records/schema.h"

#include <QString>
#include <QVector>

namespace rickyard::domain {

enum class Standing { Unknown, Good, Watch, Act }; // never shown by colour alone

struct Link {
    TableId table = TableId::Yard;
    RecordId id = 0; // 0: no link
};

struct Reason {
    QString label;           // "Dry wood on hand"
    QString value;           // "412 seasoned lb (0.14 cord)"
    bool assumption = false; // rests on something not recorded
    Link link;
};

struct SentencePart {
    QString text;
    bool emphasised = false;
};

struct Headline {
    Standing standing = Standing::Unknown;
    QVector<SentencePart> sentence; // plain text; parts are joined without extra spaces
    QString figure;                 // the numeral shown largest: "3 Dec", "+22", "2"
    QString figureUnit;             // "order by", "%", "overdue"
    QVector<Reason> reasons;

    [[nodiscard]] QString plainSentence() const
    {
        QString text;
        for (const SentencePart &part : sentence)
            text += part.text;
        return text;
    }
};

// How amounts and days are put into words: the yard's units, zone and the reader's locale.
struct Wording {
    bool metric = false;
    QString timeZone = QStringLiteral("UTC");
    QString locale = QStringLiteral("en_US");
};

} // namespace rickyard::domain
