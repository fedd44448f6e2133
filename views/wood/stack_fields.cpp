#include "views/wood/stack_fields.h"

#include "models/domain/quantities/units.h"
#include "models/domain/wood/stacks.h"
#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/text_label.h"
#include "views/widgets/unit_line_edit.h"
#include "views/wood/wood_words.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

namespace rickyard::views {

using domain::Dimension;
using domain::Length;
using domain::StackSize;
using domain::StackSizes;

namespace {

const domain::Unit &lengthUnitOf(const UnitLineEdit &edit)
{
    return *domain::findUnit(Dimension::Length, edit.unit());
}

// "16", "4.5": as few digits as it takes.
QString lengthFigure(Length length, const UnitLineEdit &edit)
{
    QString text =
        domain::formatNumber(domain::toUnit(length.base(), lengthUnitOf(edit)), 2, QLocale::c());
    while (text.contains(QLatin1Char('.')) &&
           (text.endsWith(QLatin1Char('0')) || text.endsWith(QLatin1Char('.'))))
        text.chop(1);
    return text;
}

} // namespace

StackFields::StackFields(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context)
{
    const Theme &look = theme(this);
    auto *outer = new QVBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    outer->setSpacing(look.space(2));
    m_column = new QVBoxLayout;
    m_column->setSpacing(look.space(2));
    outer->addLayout(m_column);
    auto *below = new QHBoxLayout;
    m_volume = new TextLabel(QString(), TextStyle::Body, Role::InkMuted);
    m_volume->setWordWrap(true);
    m_add = new QPushButton(tr("Add a stack"));
    m_add->setProperty("role", "quiet");
    m_add->setAccessibleName(tr("Add a stack"));
    connect(m_add, &QPushButton::clicked, this, [this] {
        addStack();
        m_rows.last().length->setFocus(Qt::OtherFocusReason);
        Q_EMIT edited();
    });
    below->addWidget(m_volume, 1);
    below->addWidget(m_add, 0, Qt::AlignTop);
    outer->addLayout(below);
    addStack();
}

UnitLineEdit *StackFields::side(const char *us, const char *metric, QWidget *into)
{
    const QString key = QString::fromLatin1(m_context.books().yard().metric ? metric : us);
    auto *edit = new UnitLineEdit(domain::findUnit(Dimension::Length, key)->symbol);
    edit->setMinimumWidth(theme(this).px(64));
    static_cast<QHBoxLayout *>(into->layout())->addWidget(edit, 1);
    connect(edit, &QLineEdit::textEdited, this, [this] {
        showVolume();
        Q_EMIT edited();
    });
    return edit;
}

void StackFields::addStack()
{
    const Theme &look = theme(this);
    Sides sides;
    sides.box = new QWidget(this);
    auto *row = new QHBoxLayout(sides.box);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(look.space(1));
    const auto times = [row] {
        row->addWidget(new TextLabel(QStringLiteral("×"), TextStyle::Body, Role::InkMuted));
    };
    sides.length = side("ft", "m", sides.box);
    times();
    sides.height = side("ft", "m", sides.box);
    times();
    sides.depth = side("in", "cm", sides.box);
    sides.remove = new QPushButton(icon(QStringLiteral("close"), Role::InkMuted), QString());
    sides.remove->setProperty("role", "quiet");
    row->addWidget(sides.remove);
    QWidget *box = sides.box;
    connect(sides.remove, &QPushButton::clicked, this, [this, box] { removeStack(box); });
    m_column->addWidget(box);
    box->show();
    m_rows << sides;
    if (m_stickLength)
        sides.depth->setText(lengthFigure(*m_stickLength, *sides.depth));
    rename();
    showVolume();
}

void StackFields::removeStack(QWidget *box)
{
    for (qsizetype i = 0; i < m_rows.size() && m_rows.size() > 1; ++i) {
        if (m_rows.at(i).box != box)
            continue;
        m_rows.removeAt(i);
        m_column->removeWidget(box);
        box->hide();
        box->deleteLater(); // its button is what led here
        m_rows.last().length->setFocus(Qt::OtherFocusReason);
        rename();
        showVolume();
        Q_EMIT edited();
        return;
    }
}

void StackFields::rename()
{
    int number = 0;
    QWidget *before = nullptr;
    for (const Sides &sides : std::as_const(m_rows)) {
        ++number;
        sides.length->setAccessibleName(tr("Length of stack %1").arg(number));
        sides.height->setAccessibleName(tr("Height of stack %1").arg(number));
        sides.depth->setAccessibleName(tr("Depth of stack %1").arg(number));
        sides.remove->setAccessibleName(tr("Take stack %1 away").arg(number));
        sides.remove->setToolTip(tr("Take stack %1 away").arg(number));
        sides.remove->setVisible(m_rows.size() > 1);
        for (QWidget *next :
             {static_cast<QWidget *>(sides.length), static_cast<QWidget *>(sides.height),
              static_cast<QWidget *>(sides.depth), static_cast<QWidget *>(sides.remove)}) {
            if (before != nullptr)
                setTabOrder(before, next);
            before = next;
        }
    }
    setTabOrder(before, m_add);
}

void StackFields::show(const StackSizes &stacks)
{
    while (m_rows.size() > 1)
        removeStack(m_rows.last().box);
    for (qsizetype i = 1; i < stacks.size(); ++i)
        addStack();
    m_rows.first().length->clear();
    m_rows.first().height->clear();
    m_rows.first().depth->clear();
    for (qsizetype i = 0; i < stacks.size(); ++i) {
        const Sides &sides = m_rows.at(i);
        sides.length->setText(lengthFigure(stacks.at(i).length, *sides.length));
        sides.height->setText(lengthFigure(stacks.at(i).height, *sides.height));
        sides.depth->setText(lengthFigure(stacks.at(i).depth, *sides.depth));
    }
    showVolume();
}

void StackFields::setStickLength(std::optional<Length> length)
{
    for (const Sides &sides : std::as_const(m_rows)) {
        // A depth that came from the sticks follows them; one that was typed stays.
        const QString text = sides.depth->text().trimmed();
        const bool ours =
            text.isEmpty() || (m_stickLength && text == lengthFigure(*m_stickLength, *sides.depth));
        if (ours)
            sides.depth->setText(length ? lengthFigure(*length, *sides.depth) : QString());
    }
    m_stickLength = length;
    showVolume();
}

bool StackFields::empty(const Sides &sides) const
{
    return sides.length->text().trimmed().isEmpty() && sides.height->text().trimmed().isEmpty();
}

bool StackFields::isEmpty() const
{
    for (const Sides &sides : m_rows)
        if (!empty(sides))
            return false;
    return true;
}

std::optional<StackSize> StackFields::read(const Sides &sides, int number, QString *problem,
                                           Stage stage) const
{
    struct Named {
        const UnitLineEdit *edit;
        QString name;
    };
    const Named named[] = {
        {sides.length, tr("length")}, {sides.height, tr("height")}, {sides.depth, tr("depth")}};
    QVector<Length> lengths;
    for (const Named &one : named) {
        const QString text = one.edit->text().trimmed();
        const auto parsed =
            domain::parseQuantity(text, Dimension::Length, lengthUnitOf(*one.edit), woodLocale());
        if (parsed && parsed->base > 0) {
            lengths << Length::ofBase(parsed->base);
            continue;
        }
        const bool toCome = text.isEmpty() && stage == Stage::Typing;
        if (problem == nullptr || !problem->isEmpty() || toCome)
            continue;
        if (text.isEmpty())
            *problem = tr("Stack %1 has no %2 yet.").arg(number).arg(one.name);
        else if (parsed)
            *problem = tr("Stack %1 has a %2 of “%3”: a stack has a size in every direction. "
                          "Measure it again, or take it away.")
                           .arg(number)
                           .arg(one.name, text);
        else
            *problem = tr("“%1” is not a length: write the %2 of stack %3 as a number of %4.")
                           .arg(text, one.name, QString::number(number), one.edit->unit());
    }
    if (lengths.size() != 3)
        return std::nullopt;
    return StackSize{lengths.at(0), lengths.at(1), lengths.at(2)};
}

StackSizes StackFields::stacks(QString *problem, Stage stage) const
{
    StackSizes all;
    int number = 0;
    for (const Sides &sides : m_rows) {
        ++number;
        if (empty(sides))
            continue;
        if (const auto stack = read(sides, number, problem, stage))
            all << *stack;
    }
    return all;
}

QString StackFields::asTyped() const
{
    QStringList all;
    for (const Sides &sides : m_rows) {
        if (empty(sides))
            continue;
        QStringList texts;
        for (const UnitLineEdit *edit : {sides.length, sides.height, sides.depth}) {
            const QString text = edit->text().trimmed();
            // A unit that was typed with the figure is enough.
            const bool bare = !text.isEmpty() && text.back().isDigit();
            texts << (bare ? QString(text + QLatin1Char(' ') + edit->unit()) : text);
        }
        all << texts.join(QStringLiteral(" × "));
    }
    return all.join(QStringLiteral("; "));
}

QVector<UnitLineEdit *> StackFields::edits() const
{
    QVector<UnitLineEdit *> all;
    for (const Sides &sides : m_rows)
        all << sides.length << sides.height << sides.depth;
    return all;
}

void StackFields::showVolume()
{
    const StackSizes complete = stacks();
    if (complete.isEmpty()) {
        m_volume->setText(tr("Length × height × depth, pieces laid close."));
        return;
    }
    const bool metric = m_context.books().yard().metric;
    const domain::Volume volume = domain::stackedVolume(complete);
    m_volume->setText(metric ? tr("%1 stacked").arg(solidAmount(volume, metric).text())
                             : tr("%1 stacked, %2")
                                   .arg(solidAmount(volume, metric).text(),
                                        stackedAmount(volume, metric).text()));
}

} // namespace rickyard::views
