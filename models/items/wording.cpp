#include "models/items/wording.h"

namespace rickyard::items {

using domain::Books;
using domain::FieldKind;
using domain::FieldSpec;
using domain::Value;

QVariant sortValue(const Books &books, const FieldSpec &field, const Value &value)
{
    if (domain::isMissing(value))
        return {};
    switch (field.kind) {
    case FieldKind::Count:
    case FieldKind::Quantity:
    case FieldKind::Time:
    case FieldKind::Flag:
        return domain::integerOr(value, 0);
    case FieldKind::Choice:
        for (int i = 0; i < field.choices.size(); ++i)
            if (field.choices.at(i).key == domain::textOf(value))
                return i;
        return -1;
    case FieldKind::Date:
        return domain::textOf(value);
    default:
        return displayText(books, field, value, QLocale(QStringLiteral("en_US"))).toLower();
    }
}

} // namespace rickyard::items
