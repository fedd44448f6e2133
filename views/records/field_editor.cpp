#include "views/records/field_editor.h"

#include "models/domain/quantities/units.h"
#include "models/domain/wood/stacks.h"
#include "models/items/wording.h"
#include "views/widgets/unit_line_edit.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDateTimeEdit>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QTimeZone>

namespace rickyard::views {

using domain::FieldKind;
using domain::FieldSpec;
using domain::Unit;
using domain::Value;

namespace {

const QLocale &usLocale()
{
    static const QLocale locale(QStringLiteral("en_US"));
    return locale;
}

QHBoxLayout *tightLayout(QWidget *owner)
{
    auto *layout = new QHBoxLayout(owner);
    layout->setContentsMargins(0, 0, 0, 0);
    return layout;
}

class TextEditor : public FieldEditor
{
public:
    TextEditor(const FieldSpec &, QWidget *parent) : FieldEditor(parent), m_edit(new QLineEdit)
    {
        tightLayout(this)->addWidget(m_edit);
        connect(m_edit, &QLineEdit::textEdited, this, &FieldEditor::edited);
    }
    void setValue(const Value &value) override
    {
        m_edit->setText(domain::textOf(value));
        // A long text shows its beginning.
        m_edit->setCursorPosition(0);
    }
    [[nodiscard]] Typed typed() const override { return {m_edit->text().trimmed(), {}, {}}; }
    [[nodiscard]] QWidget *inner() const override { return m_edit; }

private:
    QLineEdit *m_edit;
};

class LongTextEditor : public FieldEditor
{
public:
    LongTextEditor(const FieldSpec &, QWidget *parent)
        : FieldEditor(parent), m_edit(new QPlainTextEdit)
    {
        tightLayout(this)->addWidget(m_edit);
        m_edit->setTabChangesFocus(true);
        m_edit->setFixedHeight(m_edit->fontMetrics().lineSpacing() * 3 + 22);
        connect(m_edit, &QPlainTextEdit::textChanged, this, [this] {
            if (!m_setting)
                Q_EMIT edited();
        });
    }
    void setValue(const Value &value) override
    {
        m_setting = true;
        m_edit->setPlainText(domain::textOf(value));
        m_setting = false;
    }
    [[nodiscard]] Typed typed() const override { return {m_edit->toPlainText(), {}, {}}; }
    [[nodiscard]] QWidget *inner() const override { return m_edit; }

private:
    QPlainTextEdit *m_edit;
    bool m_setting = false;
};

class ChoiceEditor : public FieldEditor
{
public:
    ChoiceEditor(const FieldSpec &field, QWidget *parent)
        : FieldEditor(parent), m_combo(new QComboBox)
    {
        for (const domain::Choice &choice : field.choices)
            m_combo->addItem(choice.label, choice.key);
        m_combo->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
        m_combo->setMinimumContentsLength(8);
        tightLayout(this)->addWidget(m_combo);
        connect(m_combo, &QComboBox::activated, this, &FieldEditor::edited);
    }
    void setValue(const Value &value) override
    {
        m_combo->setCurrentIndex(m_combo->findData(domain::textOf(value)));
    }
    [[nodiscard]] Typed typed() const override
    {
        return {m_combo->currentData().toString(), {}, {}};
    }
    [[nodiscard]] QWidget *inner() const override { return m_combo; }

private:
    QComboBox *m_combo;
};

class FlagEditor : public FieldEditor
{
public:
    FlagEditor(const FieldSpec &field, QWidget *parent)
        : FieldEditor(parent), m_box(new QCheckBox(field.label))
    {
        tightLayout(this)->addWidget(m_box);
        connect(m_box, &QCheckBox::clicked, this, &FieldEditor::edited);
    }
    void setValue(const Value &value) override
    {
        m_box->setChecked(domain::integerOr(value, 0) != 0);
    }
    [[nodiscard]] Typed typed() const override
    {
        return {qint64{m_box->isChecked() ? 1 : 0}, {}, {}};
    }
    [[nodiscard]] QWidget *inner() const override { return m_box; }

private:
    QCheckBox *m_box;
};

class CountEditor : public FieldEditor
{
public:
    CountEditor(const FieldSpec &field, QWidget *parent)
        : FieldEditor(parent), m_label(field.label), m_edit(new QLineEdit)
    {
        tightLayout(this)->addWidget(m_edit);
        connect(m_edit, &QLineEdit::textEdited, this, &FieldEditor::edited);
    }
    void setValue(const Value &value) override
    {
        m_edit->setText(domain::isMissing(value) ? QString()
                                                 : QString::number(domain::integerOr(value, 0)));
    }
    [[nodiscard]] Typed typed() const override
    {
        const QString text = m_edit->text().trimmed();
        if (text.isEmpty())
            return {std::monostate{}, {}, {}};
        bool ok = false;
        const qint64 number = usLocale().toLongLong(text, &ok);
        if (!ok)
            return {std::monostate{},
                    FieldEditor::tr("%1 is a whole number, such as 12.").arg(m_label), text};
        return {number, {}, {}};
    }
    [[nodiscard]] QWidget *inner() const override { return m_edit; }

private:
    QString m_label;
    QLineEdit *m_edit;
};

// A number with its unit inside the field. Choosing another unit converts what stands there; a
// unit typed after the number is understood.
class QuantityEditor : public FieldEditor
{
public:
    QuantityEditor(const FieldSpec &field, const BooksSource &books, QWidget *parent)
        : FieldEditor(parent), m_field(field), m_books(books), m_edit(new UnitLineEdit)
    {
        QStringList symbols;
        for (const Unit &unit : domain::unitsOf(field.dimension))
            if (!unit.symbol.isEmpty())
                symbols << unit.symbol;
        m_unit = &items::unitFor(field, books().yard().metric);
        m_edit->setUnit(m_unit->symbol);
        if (symbols.size() > 1)
            m_edit->setUnits(symbols);
        m_edit->setUnit(m_unit->symbol);
        tightLayout(this)->addWidget(m_edit);
        connect(m_edit, &QLineEdit::textEdited, this, [this] {
            m_untouched.reset();
            Q_EMIT edited();
        });
        connect(m_edit, &UnitLineEdit::unitChanged, this, &QuantityEditor::changeUnit);
    }
    void setValue(const Value &value) override
    {
        m_unit = &items::unitFor(m_field, m_books().yard().metric);
        m_edit->setUnit(m_unit->symbol);
        m_untouched = value;
        showNumber(value);
    }
    [[nodiscard]] Typed typed() const override
    {
        // What was not touched keeps its exact value, whatever the digits shown.
        if (m_untouched)
            return {*m_untouched, {}, {}};
        const QString text = m_edit->text().trimmed();
        if (text.isEmpty())
            return {std::monostate{}, {}, {}};
        const auto parsed = domain::parseQuantity(text, m_field.dimension, *m_unit, usLocale());
        if (!parsed)
            return {std::monostate{},
                    FieldEditor::tr("“%1” is not a number in %2.")
                        .arg(text, m_unit->symbol.isEmpty() ? FieldEditor::tr("plain figures")
                                                            : m_unit->symbol),
                    text};
        const QString asTyped = parsed->unitTyped || m_unit->symbol.isEmpty()
                                    ? text
                                    : QString(text + QLatin1Char(' ') + m_unit->symbol);
        return {parsed->base, {}, asTyped};
    }
    [[nodiscard]] QWidget *inner() const override { return m_edit; }

private:
    void showNumber(const Value &value)
    {
        if (domain::isMissing(value)) {
            m_edit->clear();
            return;
        }
        const double number = domain::toUnit(domain::integerOr(value, 0), *m_unit);
        QLocale plain = usLocale();
        plain.setNumberOptions(QLocale::OmitGroupSeparator);
        // As many digits as the value has, up to two more than usual; no empty zeros.
        QString text = plain.toString(number, 'f', m_unit->decimals + 2);
        while (text.contains(QLatin1Char('.')) &&
               (text.endsWith(QLatin1Char('0')) || text.endsWith(QLatin1Char('.')))) {
            const bool point = text.endsWith(QLatin1Char('.'));
            text.chop(1);
            if (point)
                break;
        }
        m_edit->setText(text);
    }
    void changeUnit(const QString &symbol)
    {
        const Typed before = typed();
        for (const Unit &unit : domain::unitsOf(m_field.dimension))
            if (unit.symbol == symbol)
                m_unit = &unit;
        if (before.problem.isEmpty()) {
            m_untouched = before.value;
            showNumber(before.value);
        }
    }

    FieldSpec m_field;
    BooksSource m_books;
    UnitLineEdit *m_edit;
    const Unit *m_unit = nullptr;
    std::optional<Value> m_untouched;
};

// A day and time in the yard's zone. An optional one has a box that switches it on.
class TimeEditor : public FieldEditor
{
public:
    TimeEditor(const FieldSpec &field, const BooksSource &books, QWidget *parent)
        : FieldEditor(parent), m_field(field), m_books(books), m_edit(new QDateTimeEdit),
          m_on(field.required ? nullptr : new QCheckBox)
    {
        const bool day = field.kind == FieldKind::Date;
        m_edit->setCalendarPopup(true);
        m_edit->setDisplayFormat(day ? QStringLiteral("ddd d MMM yyyy")
                                     : QStringLiteral("ddd d MMM yyyy  h:mm AP"));
        m_edit->setLocale(usLocale());
        auto *layout = tightLayout(this);
        if (m_on != nullptr) {
            m_on->setAccessibleName(FieldEditor::tr("%1 is known").arg(field.label));
            layout->addWidget(m_on);
            connect(m_on, &QCheckBox::clicked, this, [this](bool on) {
                if (on && m_untouched && domain::isMissing(*m_untouched))
                    showTime(QDateTime::currentDateTimeUtc().toTimeZone(zone()));
                m_untouched.reset();
                m_edit->setEnabled(on);
                Q_EMIT edited();
            });
        }
        layout->addWidget(m_edit, 1);
        connect(m_edit, &QDateTimeEdit::dateTimeChanged, this, [this] {
            if (m_setting)
                return;
            m_untouched.reset();
            Q_EMIT edited();
        });
    }
    void setValue(const Value &value) override
    {
        m_untouched = value;
        const bool missing = domain::isMissing(value) ||
                             (m_field.kind == FieldKind::Date && domain::textOf(value).isEmpty());
        if (m_on != nullptr) {
            m_on->setChecked(!missing);
            m_edit->setEnabled(!missing);
        }
        if (missing) {
            showTime(QDateTime::currentDateTimeUtc().toTimeZone(zone()));
            if (m_field.required)
                m_untouched.reset(); // a needed time starts with now, in sight
        } else if (m_field.kind == FieldKind::Date) {
            showTime(QDateTime(QDate::fromString(domain::textOf(value), Qt::ISODate), QTime(12, 0),
                               zone()));
        } else {
            showTime(
                items::toLocal(m_books(), domain::Instant::ofSeconds(domain::integerOr(value, 0))));
        }
    }
    [[nodiscard]] Typed typed() const override
    {
        if (m_untouched)
            return {*m_untouched, {}, {}};
        if (m_on != nullptr && !m_on->isChecked())
            return {std::monostate{}, {}, {}};
        const QDateTime shown(m_edit->date(), m_edit->time(), zone());
        if (m_field.kind == FieldKind::Date)
            return {shown.date().toString(Qt::ISODate), {}, {}};
        return {qint64{shown.toSecsSinceEpoch()}, {}, {}};
    }
    [[nodiscard]] QWidget *inner() const override { return m_edit; }

private:
    [[nodiscard]] QTimeZone zone() const { return QTimeZone(m_books().yard().timeZone.toLatin1()); }
    // The editor shows wall-clock digits only; the zone is applied when they are read.
    void showTime(const QDateTime &local)
    {
        m_setting = true;
        m_edit->setDate(local.date());
        m_edit->setTime(QTime(local.time().hour(), local.time().minute()));
        m_setting = false;
    }

    FieldSpec m_field;
    BooksSource m_books;
    QDateTimeEdit *m_edit;
    QCheckBox *m_on;
    std::optional<Value> m_untouched;
    bool m_setting = false;
};

// Choices fresh from the books each time the list opens; typing finds.
class ReferenceEditor : public FieldEditor
{
public:
    ReferenceEditor(const FieldSpec &field, const BooksSource &books, QWidget *parent)
        : FieldEditor(parent), m_field(field), m_books(books), m_combo(new Combo(this))
    {
        m_combo->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
        m_combo->setMinimumContentsLength(8);
        m_combo->setMaxVisibleItems(14);
        tightLayout(this)->addWidget(m_combo);
        connect(m_combo, &QComboBox::activated, this, &FieldEditor::edited);
        fill();
    }
    void setValue(const Value &value) override
    {
        fill();
        m_combo->setCurrentIndex(
            qMax(0, m_combo->findData(QVariant::fromValue<qint64>(domain::integerOr(value, 0)))));
    }
    [[nodiscard]] Typed typed() const override
    {
        const qint64 id = m_combo->currentData().toLongLong();
        return {id == 0 ? Value(std::monostate{}) : Value(id), {}, {}};
    }
    [[nodiscard]] QWidget *inner() const override { return m_combo; }

private:
    class Combo : public QComboBox
    {
    public:
        explicit Combo(ReferenceEditor *owner) : m_owner(owner) {}
        void showPopup() override
        {
            m_owner->fill();
            QComboBox::showPopup();
        }

    private:
        ReferenceEditor *m_owner;
    };

    void fill()
    {
        const QVariant kept = m_combo->currentData();
        QVector<QPair<QString, domain::RecordId>> entries;
        const auto ids = domain::idsOf(m_books(), m_field.refersTo);
        for (domain::RecordId id : ids)
            entries.append({domain::titleOf(m_books(), m_field.refersTo, id), id});
        const bool dated = domain::specOf(m_field.refersTo).titleField.isEmpty();
        // Named records by name; dated ones newest first.
        std::sort(entries.begin(), entries.end(), [dated](const auto &a, const auto &b) {
            return dated ? a.second > b.second : QString::localeAwareCompare(a.first, b.first) < 0;
        });
        m_combo->clear();
        m_combo->addItem(m_field.required ? FieldEditor::tr("Choose…") : FieldEditor::tr("None"),
                         QVariant::fromValue<qint64>(0));
        for (const auto &[title, id] : std::as_const(entries))
            m_combo->addItem(title, QVariant::fromValue<qint64>(id));
        m_combo->setCurrentIndex(qMax(0, m_combo->findData(kept)));
    }

    FieldSpec m_field;
    BooksSource m_books;
    Combo *m_combo;
};

// Piece values of a moisture reading: numbers with blanks between, dry basis in the file.
class PiecesEditor : public FieldEditor
{
public:
    PiecesEditor(const FieldSpec &, QWidget *parent)
        : FieldEditor(parent), m_edit(new UnitLineEdit(QStringLiteral("% dry")))
    {
        m_edit->setUnits({QStringLiteral("% dry"), QStringLiteral("% wet")});
        m_edit->setUnit(QStringLiteral("% dry"));
        m_edit->setPlaceholderText(QStringLiteral("18.5 20 22.5"));
        tightLayout(this)->addWidget(m_edit);
        connect(m_edit, &QLineEdit::textEdited, this, [this] {
            m_untouched.reset();
            Q_EMIT edited();
        });
        connect(m_edit, &UnitLineEdit::unitChanged, this, [this] { Q_EMIT edited(); });
    }
    void setValue(const Value &value) override
    {
        m_untouched = value;
        m_edit->setUnit(QStringLiteral("% dry"));
        domain::PieceMoistures pieces;
        domain::fromValue(value, pieces);
        QStringList numbers;
        for (domain::Moisture m : pieces)
            numbers << QString::number(static_cast<double>(m.base()) / 1000.0);
        m_edit->setText(numbers.join(QLatin1Char(' ')));
    }
    [[nodiscard]] Typed typed() const override
    {
        if (m_untouched)
            return {*m_untouched, {}, {}};
        const Unit *unit = domain::findUnit(domain::Dimension::Moisture, m_edit->unit());
        domain::PieceMoistures pieces;
        QString text = m_edit->text();
        text.replace(QLatin1Char(';'), QLatin1Char(' '));
        text.replace(QLatin1Char(','), QLatin1Char(' '));
        const QStringList parts = text.split(QLatin1Char(' '), Qt::SkipEmptyParts);
        for (const QString &part : parts) {
            const auto parsed =
                domain::parseQuantity(part, domain::Dimension::Moisture, *unit, usLocale());
            if (!parsed)
                return {std::monostate{}, FieldEditor::tr("“%1” is not a moisture.").arg(part),
                        m_edit->text()};
            pieces << domain::Moisture::ofBase(parsed->base);
        }
        return {
            domain::toValue(pieces), {}, QString(m_edit->text() + QLatin1Char(' ') + unit->symbol)};
    }
    [[nodiscard]] QWidget *inner() const override { return m_edit; }

private:
    UnitLineEdit *m_edit;
    std::optional<Value> m_untouched;
};

// Stacks as a tape gives them: "8 ft × 4 ft × 16 in; 4 ft × 4 ft × 16 in".
class StacksEditor : public FieldEditor
{
public:
    StacksEditor(const FieldSpec &, const BooksSource &books, QWidget *parent)
        : FieldEditor(parent), m_books(books), m_edit(new QLineEdit)
    {
        m_edit->setPlaceholderText(system() == domain::UnitSystem::Metric
                                       ? QStringLiteral("2.4 m × 1.2 m × 40 cm")
                                       : QStringLiteral("8 ft × 4 ft × 16 in"));
        tightLayout(this)->addWidget(m_edit);
        connect(m_edit, &QLineEdit::textEdited, this, [this] {
            m_untouched.reset();
            Q_EMIT edited();
        });
    }
    void setValue(const Value &value) override
    {
        m_untouched = value;
        domain::StackSizes stacks;
        domain::fromValue(value, stacks);
        m_edit->setText(domain::stacksText(stacks, system(), usLocale()));
        m_edit->setCursorPosition(0);
    }
    [[nodiscard]] Typed typed() const override
    {
        if (m_untouched)
            return {*m_untouched, {}, {}};
        const auto stacks = domain::parseStacks(m_edit->text(), system(), usLocale());
        if (!stacks)
            return {std::monostate{}, stacks.message(), m_edit->text()};
        return {domain::toValue(stacks.value()), {}, m_edit->text()};
    }
    [[nodiscard]] QWidget *inner() const override { return m_edit; }

private:
    [[nodiscard]] domain::UnitSystem system() const
    {
        return m_books().yard().metric ? domain::UnitSystem::Metric
                                       : domain::UnitSystem::UsCustomary;
    }
    BooksSource m_books;
    QLineEdit *m_edit;
    std::optional<Value> m_untouched;
};

} // namespace

FieldEditor *makeEditor(const FieldSpec &field, const BooksSource &books, QWidget *parent)
{
    FieldEditor *editor = nullptr;
    switch (field.kind) {
    case FieldKind::Choice:
        editor = new ChoiceEditor(field, parent);
        break;
    case FieldKind::Flag:
        editor = new FlagEditor(field, parent);
        break;
    case FieldKind::Count:
        editor = new CountEditor(field, parent);
        break;
    case FieldKind::Quantity:
        editor = new QuantityEditor(field, books, parent);
        break;
    case FieldKind::Time:
    case FieldKind::Date:
        editor = new TimeEditor(field, books, parent);
        break;
    case FieldKind::Reference:
        editor = new ReferenceEditor(field, books, parent);
        break;
    case FieldKind::Pieces:
        editor = new PiecesEditor(field, parent);
        break;
    case FieldKind::Stacks:
        editor = new StacksEditor(field, books, parent);
        break;
    case FieldKind::LongText:
        editor = new LongTextEditor(field, parent);
        break;
    case FieldKind::Text:
    case FieldKind::Blob:
    case FieldKind::Typed:
        editor = new TextEditor(field, parent);
        break;
    }
    editor->inner()->setAccessibleName(field.label);
    editor->inner()->setObjectName(field.key);
    editor->setFocusProxy(editor->inner());
    return editor;
}

} // namespace rickyard::views
