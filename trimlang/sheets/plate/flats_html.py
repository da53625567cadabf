MADE_FROM = 'fd794bfed0790184276d444e759b11b1cd2c6d008ad73503bce95614b3dee66b'
from jinja2.runtime import LoopContext, Macro, Markup, Namespace, TemplateNotFound, TemplateReference, TemplateRuntimeError, Undefined, escape, identity, internalcode, markup_join, missing, str_join
name = 'flats.html'

def root(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    parent_template = None
    pass
    parent_template = environment.get_template('parts/page.html', 'flats.html')
    for name, parent_block in parent_template.blocks.items():
        context.blocks.setdefault(name, []).append(parent_block)
    yield from parent_template.root_render_func(context)

def block_kind(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    _block_vars = {}
    pass
    yield 'flats'

def block_body(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    _block_vars = {}
    l_0__ = resolve('_')
    l_0_table = resolve('table')
    try:
        t_1 = environment.filters['length']
    except KeyError:
        @internalcode
        def t_1(*unused):
            raise TemplateRuntimeError("No filter named 'length' found.")
    pass
    yield '<p class="how">'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), "The trim of these jobs is bought and cut together. Each piece's id begins with its flat's tag; put the pieces of a stick on the flats' piles as they leave the saw.", _block_vars=_block_vars))
    yield '</p>\n<section>\n<h2>'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'Flats', _block_vars=_block_vars))
    yield '</h2>\n<table class="order">\n<thead><tr><th scope="col">'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'tag', _block_vars=_block_vars))
    yield '</th><th scope="col">'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'job', _block_vars=_block_vars))
    yield '</th><th scope="col" class="number">'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'pieces', _block_vars=_block_vars))
    yield '</th><th scope="col" class="number">'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'on sticks', _block_vars=_block_vars))
    yield '</th><th scope="col" class="number">'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'trim bought alone', _block_vars=_block_vars))
    yield '</th></tr></thead>\n<tbody>\n'
    for l_1_flat in environment.getattr((undefined(name='table') if l_0_table is missing else l_0_table), 'flats'):
        _loop_vars = {}
        pass
        yield '<tr><th scope="row">'
        yield escape(environment.getattr(l_1_flat, 'tag'))
        yield '</th><td>'
        yield escape(environment.getattr(l_1_flat, 'job'))
        yield ' <span class="small">'
        yield escape(environment.getattr(l_1_flat, 'file'))
        yield '</span></td><td class="number">'
        yield escape(environment.getattr(l_1_flat, 'pieces'))
        yield '</td><td class="number">'
        yield escape(environment.getattr(l_1_flat, 'sticks'))
        yield '</td><td class="number">'
        yield escape(environment.getattr(l_1_flat, 'alone'))
        yield '</td></tr>\n'
    l_1_flat = missing
    yield '</tbody>\n</table>\n<dl class="facts">\n<div><dt>'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'trim bought together', _block_vars=_block_vars))
    yield '</dt><dd><b>'
    yield escape(environment.getattr((undefined(name='table') if l_0_table is missing else l_0_table), 'cost'))
    yield '</b></dd></div>\n'
    if environment.getattr((undefined(name='table') if l_0_table is missing else l_0_table), 'alone'):
        pass
        yield '<div><dt>'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'each job by itself', _block_vars=_block_vars))
        yield '</dt><dd>'
        yield escape(environment.getattr((undefined(name='table') if l_0_table is missing else l_0_table), 'alone'))
        yield '</dd></div>\n<div><dt>'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'saved', _block_vars=_block_vars))
        yield '</dt><dd>'
        yield escape(environment.getattr((undefined(name='table') if l_0_table is missing else l_0_table), 'saved'))
        yield '</dd></div>\n'
    yield '</dl>\n'
    for l_1_remark in environment.getattr((undefined(name='table') if l_0_table is missing else l_0_table), 'remarks'):
        _loop_vars = {}
        pass
        yield '<p class="small">'
        yield escape(l_1_remark)
        yield '</p>\n'
    l_1_remark = missing
    yield '</section>\n<section>\n<h2>'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'Sticks', _block_vars=_block_vars))
    yield '</h2>\n<table class="marks">\n<thead><tr><th scope="col">'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'stick', _block_vars=_block_vars))
    yield '</th><th scope="col">'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'source', _block_vars=_block_vars))
    yield '</th><th scope="col">'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'of flat', _block_vars=_block_vars))
    yield '</th><th scope="col">'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'pieces, in the order they are cut', _block_vars=_block_vars))
    yield '</th></tr></thead>\n<tbody>\n'
    l_1_loop = missing
    for l_1_stick, l_1_loop in LoopContext(environment.getattr((undefined(name='table') if l_0_table is missing else l_0_table), 'sticks'), undefined):
        _loop_vars = {}
        pass
        l_2_loop = missing
        for (l_2_tag, l_2_ids), l_2_loop in LoopContext(environment.getattr(l_1_stick, 'flats'), undefined):
            _loop_vars = {}
            pass
            yield '<tr>'
            if environment.getattr(l_2_loop, 'first'):
                pass
                yield '<th scope="row" rowspan="'
                yield escape(t_1(environment.getattr(l_1_stick, 'flats')))
                yield '">'
                yield escape(environment.getattr(l_1_stick, 'id'))
                yield '</th><td rowspan="'
                yield escape(t_1(environment.getattr(l_1_stick, 'flats')))
                yield '">'
                yield escape(environment.getattr(l_1_stick, 'source'))
                yield '</td>'
            yield '<td><b>'
            yield escape(l_2_tag)
            yield '</b></td><td>'
            yield escape(l_2_ids)
            yield '</td></tr>\n'
        l_2_loop = l_2_tag = l_2_ids = missing
    l_1_loop = l_1_stick = missing
    yield '</tbody>\n</table>\n</section>\n'

blocks = {'kind': block_kind, 'body': block_body}
debug_info = '1=12&2=17&3=27&4=44&6=46&8=48&10=58&11=62&16=76&17=80&18=83&19=87&22=92&23=96&27=100&29=102&31=111&32=115&33=119'
