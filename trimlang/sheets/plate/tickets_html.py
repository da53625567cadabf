MADE_FROM = 'a826d6505578cce292de755ce2d820a6718423593e32e6b1a7a2e917c3e3fb58'
from jinja2.runtime import LoopContext, Macro, Markup, Namespace, TemplateNotFound, TemplateReference, TemplateRuntimeError, Undefined, escape, identity, internalcode, markup_join, missing, str_join
name = 'tickets.html'

def root(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    parent_template = None
    l_0_ends = l_0_cut = l_0_facts = l_0_drawing = missing
    pass
    parent_template = environment.get_template('parts/page.html', 'tickets.html')
    for name, parent_block in parent_template.blocks.items():
        context.blocks.setdefault(name, []).append(parent_block)
    included_template = environment.get_template('parts/ends.svg', 'tickets.html')._get_default_module(context)
    l_0_ends = getattr(included_template, 'ends', missing)
    if l_0_ends is missing:
        l_0_ends = undefined(f"the template {included_template.__name__!r} (imported on line 2 in 'tickets.html') does not export the requested name 'ends'", name='ends')
    context.vars['ends'] = l_0_ends
    context.exported_vars.discard('ends')
    def macro(l_1_end, l_1_small, l_1_size, l_1_side):
        t_1 = []
        if l_1_end is missing:
            l_1_end = undefined("parameter 'end' was not provided", name='end')
        if l_1_small is missing:
            l_1_small = undefined("parameter 'small' was not provided", name='small')
        if l_1_size is missing:
            l_1_size = undefined("parameter 'size' was not provided", name='size')
        if l_1_side is missing:
            l_1_side = undefined("parameter 'side' was not provided", name='side')
        pass
        t_1.extend((
            '<div class="cut ',
            escape(l_1_side),
            '"><p class="setting" style="font-size:',
            escape(l_1_size),
            'em">',
            escape(environment.getattr(l_1_end, 'setting')),
            '</p><p class="joint">',
            escape(environment.getattr(l_1_end, 'joint')),
            '</p>',
        ))
        for l_2_text in l_1_small:
            _loop_vars = {}
            pass
            t_1.extend((
                '<p>',
                escape(l_2_text),
                '</p>',
            ))
        l_2_text = missing
        t_1.append(
            '</div>\n',
        )
        return concat(t_1)
    context.exported_vars.add('cut')
    context.vars['cut'] = l_0_cut = Macro(environment, macro, 'cut', ('end', 'small', 'size', 'side'), False, False, False, context.eval_ctx.autoescape)
    def macro(l_1_rows):
        t_2 = []
        if l_1_rows is missing:
            l_1_rows = undefined("parameter 'rows' was not provided", name='rows')
        pass
        for l_2_row in l_1_rows:
            _loop_vars = {}
            pass
            t_2.append(
                '<p',
            )
            if environment.getattr(l_2_row, 'strong'):
                pass
                t_2.append(
                    ' class="note"',
                )
            t_2.extend((
                '><b>',
                escape(environment.getattr(l_2_row, 'term')),
                '</b> ',
                escape(environment.getattr(l_2_row, 'text')),
                '</p>',
            ))
        l_2_row = missing
        return concat(t_2)
    context.exported_vars.add('facts')
    context.vars['facts'] = l_0_facts = Macro(environment, macro, 'facts', ('rows',), False, False, False, context.eval_ctx.autoescape)
    def macro(l_1_ticket):
        t_3 = []
        l_1__ = resolve('_')
        if l_1_ticket is missing:
            l_1_ticket = undefined("parameter 'ticket' was not provided", name='ticket')
        pass
        t_3.extend((
            '<div class="drawn">',
            escape(context.call((undefined(name='ends') if l_0_ends is missing else l_0_ends), environment.getattr(l_1_ticket, 'drawing'), context.call((undefined(name='_') if l_1__ is missing else l_1__), 'plan of both ends: left {left}, right {right}', left=environment.getattr(environment.getattr(l_1_ticket, 'left'), 'setting'), right=environment.getattr(environment.getattr(l_1_ticket, 'right'), 'setting')), environment.getitem({'face': context.call((undefined(name='_') if l_1__ is missing else l_1__), 'face'), 'bottom': context.call((undefined(name='_') if l_1__ is missing else l_1__), 'flat'), 'ceiling': context.call((undefined(name='_') if l_1__ is missing else l_1__), 'crown'), 'mixed': context.call((undefined(name='_') if l_1__ is missing else l_1__), '2 views')}, environment.getattr(environment.getattr(l_1_ticket, 'drawing'), 'view')))),
            '</div>',
        ))
        return concat(t_3)
    context.exported_vars.add('drawing')
    context.vars['drawing'] = l_0_drawing = Macro(environment, macro, 'drawing', ('ticket',), False, False, False, context.eval_ctx.autoescape)
    yield from parent_template.root_render_func(context)

def block_kind(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    _block_vars = {}
    l_0_label = resolve('label')
    l_0_code = resolve('code')
    pass
    yield 'tickets'
    if (undefined(name='label') if l_0_label is missing else l_0_label):
        pass
        yield ' label'
    if (undefined(name='code') if l_0_code is missing else l_0_code):
        pass
        yield ' coded'

def block_body(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    _block_vars = {}
    l_0__ = resolve('_')
    l_0_folds = resolve('folds')
    l_0_flags = resolve('flags')
    l_0_rows = resolve('rows')
    try:
        t_4 = environment.filters['length']
    except KeyError:
        @internalcode
        def t_4(*unused):
            raise TemplateRuntimeError("No filter named 'length' found.")
    pass
    yield '<section class="how">\n<p>'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'Stand the trim up, back against the fence, face towards you: left on the ticket is left at the saw. “44.5° right” is a cut that runs to the right on its way from the fence towards you.', _block_vars=_block_vars))
    yield ' '
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), "Too tall to stand? Lay it face up, top edge to the fence, and tilt the blade's top to the same side by the same angle.", _block_vars=_block_vars))
    yield ' '
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'A dot marks a long point. The length is always overall, to the long points.', _block_vars=_block_vars))
    if (undefined(name='folds') if l_0_folds is missing else l_0_folds):
        pass
        yield ' '
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'What stands below a dashed line inside a ticket is a flap: fold it back.', _block_vars=_block_vars))
    if (undefined(name='flags') if l_0_flags is missing else l_0_flags):
        pass
        yield ' '
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'A ticket with a tab at its left is taller than its trim: tape the tab on and let the rest stand off as a flag.', _block_vars=_block_vars))
    yield '</p>\n</section>\n<p class="find"><label>'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'Find a piece', _block_vars=_block_vars))
    yield ' <input type="search" id="find" autocomplete="off"></label> <span id="found" role="status"></span></p>\n'
    t_5 = 1
    for l_1_row in (undefined(name='rows') if l_0_rows is missing else l_0_rows):
        l_1_label = resolve('label')
        _loop_vars = {}
        pass
        yield '<div class="pair '
        yield escape(environment.getattr(environment.getattr(environment.getitem(l_1_row, 0), 'shape'), 'kind'))
        yield 's">\n'
        for l_2_ticket in l_1_row:
            l_2_code = resolve('code')
            l_2_drawing = resolve('drawing')
            l_2_cut = resolve('cut')
            l_2_facts = resolve('facts')
            l_2_shape = missing
            _loop_vars = {}
            pass
            l_2_shape = environment.getattr(l_2_ticket, 'shape')
            _loop_vars['shape'] = l_2_shape
            yield '<article class="ticket '
            yield escape(environment.getattr((undefined(name='shape') if l_2_shape is missing else l_2_shape), 'kind'))
            if environment.getattr((undefined(name='shape') if l_2_shape is missing else l_2_shape), 'flag'):
                pass
                yield ' flag'
            yield '" id="'
            yield escape(environment.getattr(l_2_ticket, 'id'))
            yield '" data-piece="'
            yield escape(environment.getattr(l_2_ticket, 'id'))
            yield '" style="font-size:'
            yield escape(environment.getattr((undefined(name='shape') if l_2_shape is missing else l_2_shape), 'type'))
            yield 'pt">\n<div class="face"'
            if (environment.getattr((undefined(name='shape') if l_2_shape is missing else l_2_shape), 'kind') != 'card'):
                pass
                yield ' style="'
                if (environment.getattr((undefined(name='shape') if l_2_shape is missing else l_2_shape), 'kind') == 'wide'):
                    pass
                    yield 'min-'
                yield 'height:'
                yield escape(environment.getattr((undefined(name='shape') if l_2_shape is missing else l_2_shape), 'down'))
                yield 'mm"'
            yield '>\n<div class="main">\n<div class="name"><h2 style="font-size:'
            yield escape(environment.getattr((undefined(name='shape') if l_2_shape is missing else l_2_shape), 'name_size'))
            yield 'em" data-id="'
            yield escape(environment.getattr(l_2_ticket, 'id'))
            yield '">'
            yield escape(environment.getattr((undefined(name='shape') if l_2_shape is missing else l_2_shape), 'name'))
            yield '</h2><p class="room" style="font-size:'
            yield escape(environment.getattr((undefined(name='shape') if l_2_shape is missing else l_2_shape), 'room_size'))
            yield 'em">'
            yield escape(environment.getattr((undefined(name='shape') if l_2_shape is missing else l_2_shape), 'room'))
            yield '</p><p class="length" style="font-size:'
            yield escape(environment.getattr((undefined(name='shape') if l_2_shape is missing else l_2_shape), 'length_size'))
            yield 'em"><b>'
            yield escape(environment.getattr(environment.getattr(l_2_ticket, 'length'), 'whole'))
            if environment.getattr(environment.getattr(l_2_ticket, 'length'), 'fraction'):
                pass
                yield '<span class="fraction">'
                if environment.getattr(environment.getattr(l_2_ticket, 'length'), 'whole'):
                    pass
                    yield ' '
                yield escape(environment.getattr(environment.getattr(l_2_ticket, 'length'), 'fraction'))
                yield '</span>'
            yield '</b><span class="unit"> '
            yield escape(environment.getattr(environment.getattr(l_2_ticket, 'length'), 'unit'))
            yield '</span></p></div>\n'
            if (undefined(name='code') if l_2_code is missing else l_2_code):
                pass
                yield '<div class="code">'
                yield escape(context.call((undefined(name='code') if l_2_code is missing else l_2_code), environment.getattr(l_2_ticket, 'payload'), environment.getattr(l_2_ticket, 'id'), _loop_vars=_loop_vars))
                yield '</div>'
            if (environment.getattr((undefined(name='shape') if l_2_shape is missing else l_2_shape), 'kind') != 'strip'):
                pass
                yield escape(context.call((undefined(name='drawing') if l_2_drawing is missing else l_2_drawing), l_2_ticket, _loop_vars=_loop_vars))
            yield '<div class="cuts">\n'
            yield escape(context.call((undefined(name='cut') if l_2_cut is missing else l_2_cut), environment.getattr(l_2_ticket, 'left'), environment.getattr((undefined(name='shape') if l_2_shape is missing else l_2_shape), 'left'), environment.getattr((undefined(name='shape') if l_2_shape is missing else l_2_shape), 'setting_size'), 'left', _loop_vars=_loop_vars))
            yield '\n'
            if (environment.getattr((undefined(name='shape') if l_2_shape is missing else l_2_shape), 'kind') == 'strip'):
                pass
                yield escape(context.call((undefined(name='drawing') if l_2_drawing is missing else l_2_drawing), l_2_ticket, _loop_vars=_loop_vars))
            yield escape(context.call((undefined(name='cut') if l_2_cut is missing else l_2_cut), environment.getattr(l_2_ticket, 'right'), environment.getattr((undefined(name='shape') if l_2_shape is missing else l_2_shape), 'right'), environment.getattr((undefined(name='shape') if l_2_shape is missing else l_2_shape), 'setting_size'), 'right', _loop_vars=_loop_vars))
            yield '\n</div>\n</div>\n<div class="facts">\n'
            yield escape(context.call((undefined(name='facts') if l_2_facts is missing else l_2_facts), environment.getattr((undefined(name='shape') if l_2_shape is missing else l_2_shape), 'face'), _loop_vars=_loop_vars))
            yield '</div>\n</div>\n'
            if environment.getattr((undefined(name='shape') if l_2_shape is missing else l_2_shape), 'flap'):
                pass
                yield '<div class="facts flap">\n'
                yield escape(context.call((undefined(name='facts') if l_2_facts is missing else l_2_facts), environment.getattr((undefined(name='shape') if l_2_shape is missing else l_2_shape), 'flap'), _loop_vars=_loop_vars))
                yield '</div>\n'
            yield '<p class="tick"><label><input type="checkbox" data-tick="'
            yield escape(environment.getattr(l_2_ticket, 'id'))
            yield ':cut"> '
            yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'cut', _loop_vars=_loop_vars))
            yield '</label></p>\n</article>\n'
        l_2_ticket = l_2_shape = l_2_code = l_2_drawing = l_2_cut = l_2_facts = missing
        if (((t_4(l_1_row) == 1) and (environment.getattr(environment.getattr(environment.getitem(l_1_row, 0), 'shape'), 'kind') == 'card')) and (not (undefined(name='label') if l_1_label is missing else l_1_label))):
            pass
            yield '<div class="ticket blank"></div>'
        yield '</div>\n'
        t_5 = 0
    l_1_row = l_1_label = missing
    if t_5:
        pass
        yield '<p>'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'Nothing is left to cut.'))
        yield '</p>\n'

def block_script(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    _block_vars = {}
    l_0_script = resolve('script')
    pass
    yield '<script>'
    yield escape((undefined(name='script') if l_0_script is missing else l_0_script))
    yield '</script>'

blocks = {'kind': block_kind, 'body': block_body, 'script': block_script}
debug_info = '1=13&2=16&4=22&5=35&7=59&8=64&10=86&11=94&3=102&13=120&15=139&17=153&18=156&19=161&20=163&21=171&22=174&23=185&25=195&26=219&27=224&29=228&30=230&31=233&35=235&38=237&40=240&43=243&46=248&49=257&52=260'
